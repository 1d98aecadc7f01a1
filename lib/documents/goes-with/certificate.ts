import 'server-only';
import type { CertificateInput } from '@/lib/documents/input/certificate';
import {
  howManySentences,
  rightsSentence,
  type HowMany,
} from '@/lib/documents/rules/goes-with/certificate';
import { formatDay, type Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import { writePicture, writeSignLines } from '@/lib/documents/commissions/page';
import {
  ash,
  fullPageOf,
  iron,
  keepTogether,
  makePaper,
  ruleLine,
  sizeOf,
  type Paper,
} from '../paper';

/** Everything that a certificate says. */
export type Certificate = {
  said: Omit<CertificateInput, 'number'>;
  many: HowMany;
  /** By what it is found again: its SKU, or the number of its commission. */
  known: string;
  /** The day of the agreement; null for what was not made to a commission. */
  agreedOn: Day | null;
  on: Day;
  /** The piece as a JPEG; null while there is no picture of it. */
  picture: Uint8Array | null;
};

/** A certificate of authenticity as a PDF of one page, to be signed by hand. */
export async function certificatePdf(
  told: Certificate,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { said, on, picture } = told;
  const pairs = pairsOf(told);
  const write = (paper: Paper) => {
    paper.font('serif').fontSize(20).fillColor(iron).text('Certificate of authenticity');
    paper.moveDown(0.3);
    ruleLine(paper);
    paper.moveDown(0.6);
    if (picture) writePicture(paper, picture, roomForPicture(paper, said, pairs));
    paper.font('italic').fontSize(titlePt).fillColor(iron).text(said.title);
    paper.font('sans').fontSize(11).text([said.artist, said.year].filter(Boolean).join(', '));
    paper.moveDown(0.8);
    writePairs(paper, pairs);
    paper.moveDown(0.6).font('sans').fontSize(10).fillColor(iron);
    paper.text(`This piece was made by ${said.artist}, and this certificate belongs to it alone.`);
    paper.moveDown(0.3).fontSize(8.5).fillColor(ash).text(rightsSentence(said.artist, said.year));
    paper.fillColor(iron);
    writeSignLines(paper, [said.artist, `Given on ${formatDay(on, 'long')}`]);
  };
  return makePaper(`Certificate: ${said.title}`, gallery, write, fullPageOf(gallery));
}

type Pair = readonly [name: string, value: string];

const nameWidth = 108;
const pairGap = 5;
const titlePt = 19;

/** What stands in pairs; what is not known is left off. */
function pairsOf({ said, many, known, agreedOn }: Certificate): Pair[] {
  const pairs: readonly (readonly [string, string | null])[] = [
    ['Made of', said.medium],
    ['Size', said.size],
    ['Weight', said.weight],
    ['How many', howManySentences(many).join(' ')],
    ['Written down as', known],
    ['Agreed on', agreedOn && formatDay(agreedOn, 'long')],
    ['First owner', said.owner],
  ];
  return pairs.flatMap(([name, value]) => (value ? [[name, value] as const] : []));
}

/** Names at the left, what they are beside them. */
function writePairs(paper: Paper, pairs: readonly Pair[]): void {
  const { margin } = sizeOf(paper);
  for (const [name, value] of pairs) {
    keepTogether(paper, 30);
    const top = paper.y;
    paper
      .font('sans')
      .fontSize(9)
      .fillColor(ash)
      .text(name, margin, top + 1.2);
    paper.font('sans').fontSize(10.5).fillColor(iron);
    paper.text(value, margin + nameWidth, top, { width: valueWidth(paper) });
    paper.x = margin;
    paper.y += pairGap;
  }
}

function valueWidth(paper: Paper): number {
  const { width, margin } = sizeOf(paper);
  return width - 2 * margin - nameWidth;
}

/** The height that is left for the picture, in points, so that all of it stands on one page. */
function roomForPicture(paper: Paper, said: Certificate['said'], pairs: readonly Pair[]): number {
  const { height, width, margin } = sizeOf(paper);
  const title = paper
    .font('italic')
    .fontSize(titlePt)
    .heightOfString(said.title, {
      width: width - 2 * margin,
    });
  paper.font('sans').fontSize(10.5);
  const table = pairs.reduce(
    (sum, [, value]) => sum + paper.heightOfString(value, { width: valueWidth(paper) }) + pairGap,
    0,
  );
  const besides = 190;
  const room = height - margin - paper.y - title - table - besides;
  return Math.min(250, Math.max(70, room));
}
