import 'server-only';
import { dayOf, formatDay } from '@/lib/dates/rules';
import type { TileWallShown } from '@/lib/installation/reads/tiles/walls';
import { invariant } from '@/lib/platform/invariant';
import type { Gallery } from '@/lib/platform/settings';
import { formatLength, formatSize } from '@/lib/units/rules';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import { settingIsTheirs, tileCautions } from '@/lib/walls/rules/tiles/cautions';
import { layTiles, type TileLayout } from '@/lib/walls/rules/tiles/layout';
import { layoutSteps, openingWords, setsTold, sliverWords } from '@/lib/walls/rules/tiles/words';
import { writeHeading } from '../commissions/page';
import { onlyKnownSigns } from '../labels/signs';
import { ash, fullPageOf, iron, keepTogether, makePaper, sizeOf, wordsAndFigure } from '../paper';
import type { Paper } from '../paper';
import { drawRulers, rulersWidth } from '../studio/ruler';
import { drawTilesOn } from './tile-drawing';

type Told = { wall: TileWallShown; asked: TileWallAsked; layout: TileLayout; gallery: Gallery };

/**
 * A wall of tiles as a PDF for whoever sets it: drawn to scale, what is ordered, where set tiles and
 * openings are, what to mind, and a line to sign for what was received.
 */
export async function tileWallPdf(
  wall: TileWallShown,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { asked } = wall;
  const laid = layTiles(asked);
  invariant(laid.ok, 'A wall that was kept can be laid out.');
  const told = { wall, asked, layout: laid.value, gallery };
  const page = fullPageOf(gallery);
  const isWide = asked.widthUm > asked.heightUm;
  const size = isWide ? { ...page, width: page.height, height: page.width } : page;
  const write = (paper: Paper) => {
    writeTop(paper, told);
    drawIt(paper, told);
    paper.addPage();
    writeOrder(paper, told);
    writePlaces(paper, told);
    writeSteps(paper, told);
    writeMind(paper, told);
    writeReceived(paper);
  };
  return makePaper(`Tiles on a wall: ${wall.title}`, gallery, write, size);
}

function writeTop(paper: Paper, { wall, gallery }: Told): void {
  const title = onlyKnownSigns(paper, wall.title, 'italic') || 'Tiles on a wall';
  paper.font('italic').fontSize(18).fillColor(iron).text(title);
  const { commission, number, at } = wall;
  const work = commission ? onlyKnownSigns(paper, commission.title, 'sans') : '';
  const whose = commission ? `, commission ${commission.number}${work ? `, ${work}` : ''}` : '';
  const on = formatDay(dayOf(at, gallery.timeZone), 'long');
  paper.font('sans').fontSize(9.5).fillColor(ash);
  paper.text(`Wall ${number}${whose}; laid out on ${on}`).moveDown(0.4);
  paper.font('bold').fontSize(9.5).fillColor('#8c3a16').text(settingIsTheirs);
  paper.fillColor(iron).moveDown(0.3);
}

function drawIt(paper: Paper, { asked, layout, gallery }: Told): void {
  const { height, margin, width } = sizeOf(paper);
  const left = height - margin - 70 - paper.y;
  const scale = drawTilesOn(paper, { asked, layout, system: gallery.lengthUnit }, left);
  const words = `Scale 1 to ${scale}, seen from the front. Tinted tiles are cut. Hold the rulers at the right against a real one: a printer that fits the page makes it smaller.`;
  const top = paper.y;
  paper.font('sans').fontSize(8).fillColor(ash);
  paper.text(words, margin, top, { width: width - 2 * margin - rulersWidth - 30 });
  drawRulers(paper, { x: width - margin - rulersWidth, y: top + 12 });
  paper.fillColor(iron);
}

function writeOrder(paper: Paper, { asked, layout, gallery }: Told): void {
  const system = gallery.lengthUnit;
  writeHeading(paper, 'To order, spare ones of the same firing among them');
  paper.font('sans').fontSize(10);
  const field = { widthUm: asked.tileWidthUm, heightUm: asked.tileHeightUm };
  const laid = layout.wholeCount + layout.cutCount;
  wordsAndFigure(
    paper,
    `Field tile ${formatSize(field, system)}: ${laid} on the wall, ${layout.cutCount} of them cut`,
    String(layout.order),
  );
  for (const { name, count, order, ...size } of layout.setOrders) {
    keepTogether(paper, 16);
    const known = onlyKnownSigns(paper, name, 'sans') || 'Set tile';
    const words = `${known} ${formatSize(size, system)}: ${count} on the wall`;
    wordsAndFigure(paper, words, String(order));
  }
  wordsAndFigure(paper, 'Joint', formatLength(asked.jointUm, system));
  paper.x = sizeOf(paper).margin;
}

function writePlaces(paper: Paper, { asked, layout, gallery }: Told): void {
  if (asked.sets.length === 0 && asked.openings.length === 0) return;
  const system = gallery.lengthUnit;
  writeHeading(paper, 'Where they are, from the lower left corner of the tiles');
  paper.font('sans').fontSize(10);
  for (const { number, name, where, size, edges } of setsTold(asked, layout, system)) {
    keepTogether(paper, 16);
    const known = onlyKnownSigns(paper, name, 'sans') || 'Set tile';
    wordsAndFigure(paper, `${number}. ${known}, ${size}, ${where}`, edges);
  }
  for (const opening of asked.openings) {
    keepTogether(paper, 16);
    const edges = `${formatLength(opening.leftUm, system)} from the left, ${formatLength(opening.bottomUm, system)} up`;
    const what = openingWords[opening.kind];
    const words = `${what.charAt(0).toUpperCase()}${what.slice(1)}, ${formatSize(opening, system)}`;
    wordsAndFigure(paper, words, edges);
  }
  paper.x = sizeOf(paper).margin;
}

function writeSteps(paper: Paper, { asked, layout, gallery }: Told): void {
  keepTogether(paper, 90);
  writeHeading(paper, 'How it was laid out');
  writeAll(paper, layoutSteps(asked, layout, gallery.lengthUnit));
}

function writeMind(paper: Paper, { asked, layout, gallery }: Told): void {
  keepTogether(paper, 90);
  writeHeading(paper, 'What to mind');
  writeAll(paper, [
    ...sliverWords(layout, gallery.lengthUnit),
    ...tileCautions(asked),
    'Count and look at every piece before you set; lay the whole out dry; set one and look at it the next day.',
    'Local codes and a licensed contractor decide.',
  ]);
}

function writeAll(paper: Paper, sentences: readonly string[]): void {
  const { width, margin } = sizeOf(paper);
  paper.font('sans').fontSize(9.5);
  for (const sentence of sentences) {
    keepTogether(paper, 28);
    paper.text(sentence, margin, paper.y, { width: width - 2 * margin }).moveDown(0.25);
  }
}

/** What a setter signs for when the tiles are handed to them. */
function writeReceived(paper: Paper): void {
  keepTogether(paper, 80);
  const { width, margin } = sizeOf(paper);
  writeHeading(paper, 'Received by the setter');
  paper.font('sans').fontSize(9.5);
  paper.text('______ pieces, counted; none damaged; laid out dry; agreed with this drawing.');
  const y = paper.y + 30;
  paper.lineWidth(0.5).strokeColor(iron);
  paper
    .moveTo(margin, y)
    .lineTo(margin + 260, y)
    .stroke();
  paper
    .moveTo(width - margin - 140, y)
    .lineTo(width - margin, y)
    .stroke();
  paper.fontSize(8).fillColor(ash);
  paper.text('Name and signature', margin, y + 3, { lineBreak: false });
  paper.text('Day', width - margin - 140, y + 3, { lineBreak: false });
  paper.fillColor(iron);
}
