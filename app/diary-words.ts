import 'server-only';
import type { RefusalWords } from '@/app/form-action';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { askedHeadline, questionSentences } from '@/lib/installation/rules/diary/question-words';
import type { AskRefusal } from '@/lib/installation/rules/diary/questions';
import {
  diaryRefusalMessage,
  refusedField,
  type DiaryRefusal,
  type RefusedField,
} from '@/lib/installation/rules/diary/refusals';
import { offersRefusalMessage, type OffersNo } from '@/lib/installation/rules/offers/refusals';
import { getGallery } from '@/lib/platform/settings';

/** A refusal of the diary as its form shows it: what is asked stands at a field of its own. */
export async function wordsFor(refusal: DiaryRefusal, actor: Actor): Promise<RefusalWords> {
  const { timeZone: zone } = await getGallery();
  if (refusal.code === 'asks') return askedWords(refusal, actor, zone);
  const message = diaryRefusalMessage(refusal, zone);
  const field = refusedField(refusal);
  return field ? { message, fields: { [field]: fieldWords[field] } } : message;
}

/** The same for days that are offered. */
export async function offerWords(refusal: OffersNo, actor: Actor): Promise<RefusalWords> {
  const { timeZone } = await getGallery();
  if (refusal.code === 'asks') return askedWords(refusal, actor, timeZone);
  return offersRefusalMessage(refusal);
}

const fieldWords: Readonly<Record<RefusedField, string>> = {
  commissionId: 'Look at this again.',
  leadId: 'Somebody else, or another time.',
  crewIds: 'Choose who goes along again.',
  from: 'Choose another time.',
  to: 'This must be later than the time above.',
  day: 'Choose a time that is still to come.',
};

/** What only the owner may say is told at the head, without a field to answer it. */
function askedWords(refusal: Omit<AskRefusal, 'code'>, actor: Actor, zone: string): RefusalWords {
  const seesMoney = isAllowed(actor.roles, 'commissions.see_money');
  const said = questionSentences(refusal.questions, { zone, seesMoney });
  const atOwner = refusal.ownerAlone ? (said.balance_owed ?? '') : '';
  const fields: Record<string, string> = {};
  for (const [about, sentence] of Object.entries(said)) {
    if (about === 'balance_owed' && refusal.ownerAlone) continue;
    fields[`word.${about}`] = sentence;
  }
  return { message: `${askedHeadline(refusal)} ${atOwner}`.trim(), fields };
}
