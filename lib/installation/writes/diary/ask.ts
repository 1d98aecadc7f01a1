import 'server-only';
import { isAllowed, type Doer } from '@/lib/access/rules';
import { loadAskFacts } from '@/lib/installation/reads/diary/asks';
import type { Wanted } from '@/lib/installation/reads/diary/booking';
import type { PlaceToGo } from '@/lib/installation/rules/crew/ways';
import {
  decideQuestions,
  findQuestions,
  type AskRefusal,
  type ReadyBy,
  type Word,
  type Words,
} from '@/lib/installation/rules/diary/questions';
import type { Tx } from '@/lib/platform/db/transaction';
import type { Result } from '@/lib/platform/result';
import type { Gallery } from '@/lib/platform/settings';

/** What somebody wants to book, where, and what they said of what is not as it should be. */
export type ToAsk = {
  wanted: Wanted;
  place: PlaceToGo;
  words: Words;
  gallery: Gallery;
  ready: ReadyBy | null;
};

/**
 * Asks what a person may decide; joins the caller's transaction.
 *
 * @returns the words to keep; refuses as {@link decideQuestions}
 */
export async function askFirst(
  tx: Tx,
  doer: Doer,
  { words, ...asking }: ToAsk,
): Promise<Result<Word[], AskRefusal>> {
  const facts = await loadAskFacts(tx, { ...asking, now: doer.at });
  const questions = findQuestions(facts, asking.wanted.span);
  return decideQuestions(questions, words, isAllowed(doer.actor.roles, 'diary.before_paid'));
}
