import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { readConsents } from '@/lib/collectors/reads/consents';
import { saidNo } from '@/lib/collectors/rules/consent';
import type { SendLetterInput } from '@/lib/commissions/input/page/letter';
import { withoutAddresses, wordsWithAddress } from '@/lib/commissions/rules/page/letters';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findForWriting,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import { addLink, newToken } from '@/lib/commissions/writes/page/link';
import { db } from '@/lib/platform/db/client';
import type { Tx } from '@/lib/platform/db/transaction';
import { mailIsSetUp, sendMail, type Letter, type MailRefusal } from '@/lib/platform/mail';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';

/** How letters leave the house; another one in tests. */
export type SendsMail = (letter: Letter) => Promise<Result<true, MailRefusal>>;

/** A letter that was written: whether it went out, and if not, why. */
export type LetterSent = { commissionNumber: number; failure: string | null; isOnItsWay: boolean };

/** Where the pages of this gallery are, and how its letters leave the house. */
export type PostHouse = { origin: string; send?: SendsMail; isSetUp?: () => boolean };

/**
 * Sends a letter over the gallery's mail server: it is written down first, then handed over once,
 * then the outcome is written beside it. The address of the page is in the letter, and nowhere else.
 *
 * Sent twice it goes out once. A new address whose letter failed stays open until it is withdrawn
 * or runs out, and the sheet shows it.
 *
 * @returns refuses, in this order: not allowed, no mail server, a key used for something else,
 *   unknown, no letters wanted
 */
export async function sendLetter(
  doer: Doer,
  input: SendLetterInput,
  house: PostHouse,
): Promise<Result<LetterSent, AnyRefusal>> {
  const { requestKey, ...letter } = input;
  if (!(house.isSetUp ?? mailIsSetUp)()) return refuse({ code: 'mail_not_set_up' });
  const ids = { mailId: newId(), linkId: newId(), token: newToken() };
  const command = {
    name: 'sendLetter',
    permission: 'commissions.take_money',
    key: requestKey,
    input: letter,
  } as const;
  const written = await carryOut(doer, command, (tx) => addLetter(tx, doer, { ...letter, ...ids }));
  if (!written.ok) return written;
  const { commissionNumber, mailId } = written.value;
  if (mailId !== ids.mailId) return ok({ commissionNumber, ...(await outcomeOf(mailId)) });
  const address = letter.withAddress === 'yes' ? `${house.origin}/c/${ids.token}` : null;
  const { name, email } = await getGallery();
  const sent = await (house.send ?? sendMail)({
    ...{ toName: letter.toName, toAddress: letter.toAddress, subject: letter.subject },
    words: wordsWithAddress(letter.words, address),
    from: { name, address: email },
  });
  const failure = sent.ok ? null : sent.refusal.why;
  await db().mailSent.update({
    where: { id: mailId },
    data: sent.ok ? { sentAt: doer.at } : { failure },
    select: { id: true },
  });
  return ok({ commissionNumber, failure, isOnItsWay: false });
}

/** The step of {@link sendLetter}: writes it down; joins the caller's transaction. */
export async function addLetter(
  tx: Tx,
  doer: Doer,
  letter: Omit<SendLetterInput, 'requestKey'> & { mailId: string; linkId: string; token: string },
): Promise<Result<{ mailId: string; commissionNumber: number }, CommissionRefusal>> {
  const { commissionId, toName, toAddress, mailId, days, linkId, token } = letter;
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const wants = await wantsLetters(tx, found.value.collectorId);
  if (!wants && letter.allTheSame === 'no') {
    return refuse({ code: 'wants_no_letters', name: toName });
  }
  if (letter.withAddress === 'yes') {
    const made = await addLink(tx, doer, { commissionId, forName: toName, days, linkId, token });
    if (!made.ok) return made;
  }
  const subject = withoutAddresses(letter.subject);
  await tx.mailSent.create({
    data: {
      ...{ id: mailId, commissionId, toAddress, subject, words: withoutAddresses(letter.words) },
      ...{ staffId: doer.actor.id, at: doer.at },
    },
    select: { id: true },
  });
  await tellHistory(tx, doer, { commissionId, did: `wrote to ${toName}`, facts: { subject } });
  return ok({ mailId, commissionNumber: found.value.number });
}

async function outcomeOf(id: string): Promise<Pick<LetterSent, 'failure' | 'isOnItsWay'>> {
  const { sentAt, failure } = await db().mailSent.findUniqueOrThrow({ where: { id } });
  return { failure, isOnItsWay: sentAt === null && failure === null };
}

/** Whether the collector did not say no to letters by mail, under any of their names. */
async function wantsLetters(tx: Tx, collectorId: string): Promise<boolean> {
  return !saidNo(await readConsents(tx, collectorId), 'email');
}
