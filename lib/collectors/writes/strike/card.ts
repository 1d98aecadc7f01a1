import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { readConsents } from '../../reads/consents';
import { consentKinds, mayWriteTo, struckOutHow } from '../../rules/consent';

/** Somebody whose data are struck out: every entry of theirs, and how they are called from now on. */
export type ToStrike = {
  livingId: string;
  ids: readonly string[];
  /** Their names as they were, and those of their household. */
  names: readonly string[];
  /** Their mail addresses as they were. */
  emails: readonly string[];
  erasedName: string;
  on: Day;
};

/** Strikes out the card: names, ways to reach them, people, addresses, notes, where pieces hang. */
export async function strikeCard(tx: Tx, doer: Doer, who: ToStrike): Promise<void> {
  const theirs = { collectorId: { in: [...who.ids] } };
  await tx.ownedPiece.deleteMany({ where: theirs });
  await tx.collectorAddress.deleteMany({ where: theirs });
  await tx.collectorPerson.deleteMany({ where: theirs });
  await tx.collectorNote.deleteMany({ where: theirs });
  await tx.tradeTerms.deleteMany({ where: theirs });
  await sayNo(tx, doer, who);
  const nowhere = { email: null, phone: null, street: null, city: null, state: null };
  await tx.collector.updateMany({
    where: { id: { in: [...who.ids] } },
    data: {
      ...{ name: who.erasedName, firm: null, note: '', ...nowhere, postcode: null },
      erasedAt: doer.at,
    },
  });
}

/** What they said yes to is a no from now on; what was said before is never changed, and names nobody. */
async function sayNo(tx: Tx, doer: Doer, { livingId, on }: ToStrike): Promise<void> {
  const consents = await readConsents(tx, livingId);
  const kinds = consentKinds.filter((kind) => mayWriteTo(consents, kind));
  await tx.consent.createMany({
    data: kinds.map((to) => ({
      ...{ collectorId: livingId, to, given: false, how: struckOutHow },
      ...{ saidOn: dateFromDay(on), staffId: doer.actor.id, at: doer.at },
    })),
  });
}
