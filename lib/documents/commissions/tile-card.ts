import 'server-only';
import PDFDocument from 'pdfkit';
import type { ShownWhole, TileTold } from '@/lib/commissions/reads/colours/shown';
import { approvalWayWords } from '@/lib/commissions/rules/words';
import { formatDay } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { ash, fullPageOf, iron, takeHands, type Paper } from '../paper';

/** A colour tile to print a card of. */
export type TileCard = {
  tile: Extract<ShownWhole, { what: 'colour_tile' }>;
  work: string;
  collector: string;
  commissionNumber: number;
  /** Its picture as a JPEG; null for none. */
  picture: Uint8Array | null;
};

/** A card of postcard size (A6, lying), in points; two of them fit on Letter and on A4. */
const card = { width: 419.5, height: 297.6 } as const;
const inset = 18;

type Place = { readonly x: number; readonly y: number };

/**
 * The card of a colour tile as a PDF, twice on a page with marks to cut along: one lies with the
 * studio's set, one goes with the twin.
 */
export async function tileCardPdf(
  told: TileCard,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height } = fullPageOf(gallery);
  // The cards carry no head of the gallery's and stand nearer to the edge than text may.
  const paper = new PDFDocument({
    size: [width, height],
    margin: 0,
    lang: 'en-US',
    displayTitle: true,
    info: { Title: `Colour tile ${told.tile.label}: ${told.work}`, Author: gallery.name },
  });
  const parts: Uint8Array[] = [];
  paper.on('data', (part: Uint8Array) => parts.push(part));
  const done = new Promise<void>((resolve) => paper.on('end', resolve));
  takeHands(paper);
  const x = (width - card.width) / 2;
  const gap = (height - 2 * card.height) / 3;
  writeCard(paper, told, { at: { x, y: gap }, copy: 'The studio’s set', gallery });
  const y = 2 * gap + card.height;
  writeCard(paper, told, { at: { x, y }, copy: 'The twin', gallery });
  paper.end();
  await done;
  return new Uint8Array(Buffer.concat(parts));
}

function writeCard(
  paper: Paper,
  told: TileCard,
  { at, copy, gallery }: { at: Place; copy: string; gallery: Gallery },
): void {
  cutMarks(paper, at);
  const { tile, work, collector, commissionNumber, picture } = told;
  const width = card.width - 2 * inset;
  const x = at.x + inset;
  const one = { width, height: 22, ellipsis: true, lineBreak: false } as const;
  paper.font('serif').fontSize(17).fillColor(iron);
  paper.text(`Colour tile ${tile.label}`, x, at.y + inset, one);
  paper.font('sans').fontSize(9).fillColor(ash);
  paper.text(copy, x, at.y + inset + 6, { ...one, align: 'right' });
  paper
    .font('italic')
    .fontSize(11)
    .fillColor(iron)
    .text(work, x, at.y + inset + 22, one);
  paper.font('sans').fontSize(8).fillColor(ash);
  paper.text(`${gallery.name} · commission ${commissionNumber}, ${collector}`, x, at.y + 57, one);
  writeMiddle(paper, { tile, picture, at: { x, y: at.y + 76 } });
  writeFoot(paper, tile, { x, y: at.y + card.height - inset - 30 });
}

function writeMiddle(
  paper: Paper,
  { tile, picture, at }: { tile: TileCard['tile']; picture: Uint8Array | null; at: Place },
): void {
  const column = 126;
  const shift = picture ? column + 14 : 0;
  if (picture) paper.image(Buffer.from(picture), at.x, at.y, { fit: [column, 150] });
  const width = card.width - 2 * inset - shift;
  paper.font('bold').fontSize(9.5).fillColor(iron);
  paper.text(tile.tile.glazes, at.x + shift, at.y, { width, height: 50, ellipsis: true });
  const top = paper.y + 3;
  paper.font('sans').fontSize(9);
  const height = at.y + 166 - top;
  const lines = tileCardLines(tile.tile).join('\n');
  paper.text(lines, at.x + shift, top, { width, height, ellipsis: true, lineGap: 1.5 });
}

function writeFoot(paper: Paper, { yes, contentSha256 }: TileCard['tile'], at: Place): void {
  const width = card.width - 2 * inset;
  const said = yes
    ? `${yes.approvedBy} said yes ${approvalWayWords[yes.how]}, ${formatDay(yes.approvedOn, 'long')}`
    : 'Nobody has said yes to it yet.';
  const one = { width, height: 12, ellipsis: true, lineBreak: false } as const;
  paper.font('bold').fontSize(9).fillColor(iron).text(said, at.x, at.y, one);
  paper.font('sans').fontSize(7.5).fillColor(ash);
  const kept = `kept under ${contentSha256.slice(0, 16)}…`;
  paper.text(`${kept} · A printed colour is none: the fired tile decides.`, at.x, at.y + 15, one);
  paper.fillColor(iron);
}

/** What stands on the card below the glazes, one thing a line; what is not known is left out. */
export function tileCardLines(tile: TileTold): string[] {
  const { body, coats, cone, firing, batch, keptAt, areas } = tile;
  const fired = [
    coats === null ? '' : coats === 1 ? '1 coat' : `${coats} coats`,
    cone === '' ? '' : `cone ${cone}`,
    firing === '' ? '' : `firing ${firing}`,
  ];
  return [
    areas.length === 0 ? '' : `for ${areas.join(', ')}`,
    body === null ? '' : `on ${body}`,
    fired.filter(Boolean).join(' · '),
    batch === null ? '' : `glaze bucket ${batch}`,
    ...rangeLines(tile),
    keptAt === '' ? '' : `the studio’s set: ${keptAt}`,
  ].filter(Boolean);
}

function rangeLines({ shades }: TileTold): string[] {
  const measured = shades.flatMap(({ shade, lab }) =>
    lab ? [`${shade}: L* ${lab[0]}, a* ${lab[1]}, b* ${lab[2]}`] : [],
  );
  return measured.length === 0 ? ['range not measured'] : [...measured, '(CIE L*a*b*, D50)'];
}

/** Short strokes outside the four corners, to lay a knife along. */
function cutMarks(paper: Paper, { x, y }: Place): void {
  const [from, to] = [4, 14];
  for (const [cornerX, out] of [
    [x, -1],
    [x + card.width, 1],
  ] as const) {
    for (const [cornerY, off] of [
      [y, -1],
      [y + card.height, 1],
    ] as const) {
      stroke(paper, { x: cornerX + out * from, y: cornerY }, { x: cornerX + out * to, y: cornerY });
      stroke(paper, { x: cornerX, y: cornerY + off * from }, { x: cornerX, y: cornerY + off * to });
    }
  }
}

function stroke(paper: Paper, from: Place, to: Place): void {
  paper.moveTo(from.x, from.y).lineTo(to.x, to.y).lineWidth(0.5).strokeColor(ash).stroke();
}
