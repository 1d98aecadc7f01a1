import 'server-only';
import { formatDay, type Day } from '@/lib/dates/rules';
import { cancelUntil } from '@/lib/dates/rules/business-days';
import type { Gallery } from '@/lib/platform/settings';
import { addressLines } from '../rules';
import { fullPageOf, makePaper, type Paper } from '../paper';
import { writePaperHead, writeSignLines, writeWords } from './page';

/** What the right to cancel is about. */
export type CancelNotice = {
  work: string;
  collector: string;
  commissionNumber: number;
  /** The day on which it is signed. */
  on: Day;
};

/**
 * The notice of the right to cancel, twice: one for the collector to send back, one to keep.
 *
 * @source 16 CFR Part 429: a sale made at the buyer's home can be cancelled until midnight of the
 *   third business day. The wording is the gallery's own; a lawyer looks at it before it is used
 */
export async function cancelNoticePdf(
  notice: CancelNotice,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const write = (paper: Paper) => {
    writeOne(paper, notice, { gallery, copy: 'To send back' });
    paper.addPage();
    writeOne(paper, notice, { gallery, copy: 'To keep' });
  };
  return makePaper(`Right to cancel: ${notice.work}`, gallery, write, fullPageOf(gallery));
}

function writeOne(
  paper: Paper,
  notice: CancelNotice,
  { gallery, copy }: { gallery: Gallery; copy: string },
): void {
  const until = formatDay(cancelUntil(notice.on), 'long');
  writePaperHead(paper, { ...notice, title: 'Right to cancel' });
  writeWords(paper, `${copy}.`);
  writeWords(
    paper,
    `What was agreed at your home on ${formatDay(notice.on, 'long')} can be cancelled without giving a reason and without paying anything, until midnight of ${until}.`,
  );
  writeWords(
    paper,
    `To cancel, sign and date this paper and send or bring it to ${[gallery.name, ...addressLines(gallery)].join(', ')} by then. Any other note in writing will do as well.`,
  );
  writeWords(
    paper,
    'If it is cancelled, everything that was paid goes back within ten business days, and whatever was signed is returned or struck out. Anything that was handed over is kept ready to be fetched, in the state in which it came.',
  );
  paper.moveDown(2);
  writeWords(paper, 'I cancel this agreement.');
  writeSignLines(paper, [notice.collector, 'The day']);
}
