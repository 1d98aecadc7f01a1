import 'server-only';
import type { Gallery } from '@/lib/platform/settings';
import { makePaper, ruleLine } from '../paper';

/**
 * The sign for the counter: on what terms a piece comes back, in letters that are read standing.
 * A gallery that has written no terms gets the days alone, and nought days say that all is final.
 */
export async function returnSignPdf(gallery: Gallery): Promise<Uint8Array<ArrayBuffer>> {
  return makePaper('Bringing a piece back', gallery, (paper) => {
    ruleLine(paper);
    paper.moveDown(1).font('serif').fontSize(30).text('Bringing a piece back', { lineGap: 4 });
    paper.moveDown(0.6).font('sans').fontSize(17).text(signWords(gallery), { lineGap: 5 });
  });
}

function signWords({ returnTerms, returnDays }: Gallery): string {
  if (returnTerms.trim() !== '') return returnTerms;
  if (returnDays === 0) return 'Every piece is sold for good.';
  return `A piece comes back within ${returnDays} days, whole and with its receipt.`;
}
