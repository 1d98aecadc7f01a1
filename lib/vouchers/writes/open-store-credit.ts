import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { livingId } from '@/lib/collectors/reads/group';
import { dayOf } from '@/lib/dates/rules';
import { accounts } from '@/lib/ledger/rules';
import { postEntry } from '@/lib/ledger/writes';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { OpenStoreCreditInput } from '../input';
import { mostCreditCents, type CreditRefusal } from '../rules';
import { moveCredits, openCredit } from '../writes';

/**
 * Gives a store credit by hand, for a reason: the owner's amends. It counts as a discount given.
 *
 * @returns its number; refuses, in this order: not allowed, a key used for something else, more
 *   than is given by hand, a card's number typed, a collector nobody knows
 */
export async function openStoreCredit(
  doer: Doer,
  { requestKey, ...input }: OpenStoreCreditInput,
): Promise<Result<{ code: string }, CreditRefusal>> {
  const allowed = allow(doer.actor, 'counter.discount_beyond');
  if (!allowed.ok) return allowed;
  const command = { key: requestKey, name: 'openStoreCredit', staffId: doer.actor.id, at: doer.at };
  return onceOnly<{ code: string }, CreditRefusal>({ ...command, input }, (tx) =>
    open(tx, doer, input),
  );
}

async function open(
  tx: Tx,
  doer: Doer,
  { collectorId, amount, why }: Omit<OpenStoreCreditInput, 'requestKey'>,
): Promise<Result<{ code: string }, CreditRefusal>> {
  if (amount > mostCreditCents) return refuse({ code: 'far_too_much', mostCents: mostCreditCents });
  if (looksLikeCardNumber(why)) return refuse({ code: 'card_number_typed' });
  const unknown = collectorId !== null && (await livingId(tx, collectorId)) === null;
  if (unknown) return refuse({ code: 'unknown_collector' });

  const { timeZone } = await getGallery(tx);
  const credit = { kind: 'store_credit', collectorId, note: why, expiresOn: null } as const;
  const { creditId, code } = await openCredit(tx, doer, credit);
  await moveCredits(tx, doer, [{ creditId, amountCents: amount }]);
  await postEntry(tx, {
    ...{ on: dayOf(doer.at, timeZone), at: doer.at, staffId: doer.actor.id },
    ...{ memo: `Store credit given: ${why}`, paper: 'Credit', paperId: creditId },
    postings: [
      { account: accounts.discountsGiven, amountCents: amount },
      { account: accounts.storeCredit, amountCents: -amount, creditId },
    ],
  });
  await recordAudit(tx, doer, {
    ...{ did: 'gave a store credit', subject: 'Credit', subjectId: creditId },
    facts: { amountCents: amount, why },
  });
  return ok({ code });
}
