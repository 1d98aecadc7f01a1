import 'server-only';
import type { ShownWhole, TileTold } from '@/lib/commissions/reads/colours/shown';
import { areasOf } from '@/lib/commissions/reads/colours/areas';
import { approvalWayWords } from '@/lib/commissions/rules/words';
import { formatDay, type Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { ash, fullPageOf, iron, keepTogether, makePaper, sizeOf, type Paper } from '../paper';
import { writeHeading, writePaperHead, writePicture, writeWords } from './page';

/** A picture of the paper by its file, as a JPEG. */
export type PaperPictures = ReadonlyMap<string, Uint8Array>;

/** Everything that the colour sheet of a commission tells. */
export type ColourSheet = {
  work: string;
  collector: string;
  commissionNumber: number;
  on: Day;
  shown: readonly ShownWhole[];
  pictures: PaperPictures;
};

/**
 * The colour sheet as a PDF: the sketch with its areas, and each tile with what stands on its back,
 * its range, who said yes and to which content.
 */
export async function colourSheetPdf(
  sheet: ColourSheet,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const write = (paper: Paper) => {
    writePaperHead(paper, { ...sheet, title: 'Colour sheet' });
    writeSketch(paper, sheet);
    writeAreas(paper, sheet.shown);
    for (const tile of sheet.shown.filter((each) => each.what === 'colour_tile')) {
      writeTile(paper, tile, sheet.pictures);
    }
    writeWords(
      paper,
      'A yes to a tile takes any colour between its lightest and its darkest. Printed colours are none: the fired tiles decide.',
    );
  };
  return makePaper(`Colour sheet: ${sheet.work}`, gallery, write, fullPageOf(gallery));
}

function writeSketch(paper: Paper, { shown, pictures }: ColourSheet): void {
  const sketches = shown.filter((each) => each.what === 'sketch');
  const sketch = sketches.findLast((each) => each.yes !== null) ?? sketches.at(-1);
  const bytes = sketch && pictures.get(sketch.fileId);
  if (!sketch || !bytes) return;
  writeHeading(paper, `Sketch ${sketch.label}${sketch.yes ? ', approved' : ''}`);
  writePicture(paper, bytes, 200);
}

function writeAreas(paper: Paper, shown: readonly ShownWhole[]): void {
  const areas = areasOf(shown);
  if (areas.length === 0) return;
  writeHeading(paper, 'Areas');
  areas.forEach(({ name, tiles, isApproved }, at) => {
    const which = tiles.length === 0 ? 'no tile yet' : `tile ${labels(tiles)}`;
    writeWords(paper, `${at + 1}  ${name}: ${which}${isApproved ? ', approved' : ''}`);
  });
}

function labels(tiles: readonly ShownWhole[]): string {
  const list = tiles.map(({ label }) => label).join(', ');
  return tiles.length > 1 ? `${list}, from dark to light` : list;
}

function writeTile(paper: Paper, shown: ShownWhole, pictures: PaperPictures): void {
  const { label, tile, yes, fileId, contentSha256 } = shown;
  if (!tile) return;
  keepTogether(paper, 150);
  writeHeading(paper, `Colour tile ${label}`);
  const { margin } = sizeOf(paper);
  const top = paper.y;
  const bytes = pictures.get(fileId);
  if (bytes) paper.image(Buffer.from(bytes), margin, top, { fit: [110, 100] });
  const x = margin + 128;
  paper.x = x;
  paper.y = top;
  paper.font('sans').fontSize(9.5).fillColor(iron);
  for (const line of tileLines(tile)) paper.text(line, x);
  if (yes) {
    const how = approvalWayWords[yes.how];
    const light = yes.light === '' ? '' : `, looked at ${yes.light}`;
    paper
      .font('bold')
      .text(`${yes.approvedBy} said yes ${how}, ${formatDay(yes.approvedOn, 'long')}${light}`, x);
  }
  paper
    .font('sans')
    .fontSize(8)
    .fillColor(ash)
    .text(`kept under ${contentSha256.slice(0, 16)}…`, x);
  paper.fillColor(iron);
  paper.x = margin;
  paper.y = Math.max(paper.y, top + 104) + 6;
}

function tileLines(tile: TileTold): string[] {
  const measured = tile.shades.flatMap(({ shade, lab }) =>
    lab ? [`${shade}: L* ${lab[0]}, a* ${lab[1]}, b* ${lab[2]} (D50)`] : [],
  );
  return [
    tile.glazes,
    [
      tile.body,
      tile.coats === null ? null : `${tile.coats} coats`,
      tile.cone === '' ? null : `cone ${tile.cone}`,
      tile.firing === '' ? null : `firing ${tile.firing}`,
    ]
      .filter(Boolean)
      .join(' · '),
    tile.areas.length > 0 ? `for ${tile.areas.join(', ')}` : '',
    tile.batch === null ? '' : `glaze bucket ${tile.batch}`,
    ...measured,
    tile.given
      ? `twin ${tile.given.how}, ${formatDay(tile.given.on, 'short')}`
      : 'twin not given yet',
    tile.keptAt === '' ? '' : `the studio’s set: ${tile.keptAt}`,
  ].filter(Boolean);
}
