import 'server-only';
import { isAllowed, type Doer } from '@/lib/access/rules';
import type { OfferDaysInput } from '@/lib/installation/input/offers/days';
import { loadAskFacts } from '@/lib/installation/reads/diary/asks';
import type { Span } from '@/lib/installation/rules/diary/kinds';
import {
  decideQuestions,
  findQuestions,
  type AskRefusal,
  type Question,
  type ReadyBy,
  type Word,
} from '@/lib/installation/rules/diary/questions';
import type { Tx } from '@/lib/platform/db/transaction';
import type { Result } from '@/lib/platform/result';
import type { Gallery } from '@/lib/platform/settings';

/** What is offered, the spans of its days, and when the piece is ready. */
export type DaysToAsk = {
  offer: Omit<OfferDaysInput, 'requestKey'>;
  spans: readonly Span[];
  gallery: Gallery;
  ready: ReadyBy | null;
};

/**
 * Asks what a person may decide of all the days at once; joins the caller's transaction.
 *
 * @returns the words to keep with the offer; refuses as {@link decideQuestions}
 */
export async function askOfDays(
  tx: Tx,
  doer: Doer,
  { offer, spans, gallery, ready }: DaysToAsk,
): Promise<Result<Word[], AskRefusal>> {
  const { address, travelMinutes } = offer;
  const place = { address, travelMinutes };
  const questions: Question[] = [];
  for (const span of spans) {
    const wanted = { ...offer, span, exceptId: null };
    const facts = await loadAskFacts(tx, { wanted, place, gallery, now: doer.at, ready });
    questions.push(...findQuestions(facts, span).filter((one) => isNew(questions, one)));
  }
  return decideQuestions(questions, offer.words, isAllowed(doer.actor.roles, 'diary.before_paid'));
}

/** The balance and the readiness are the same for all days, and are said once. */
function isNew(asked: readonly Question[], { about }: Question): boolean {
  const isOfAll = about === 'balance_owed' || about === 'before_ready';
  return !isOfAll || !asked.some((one) => one.about === about);
}
