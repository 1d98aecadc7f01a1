import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { EraseInput } from '../input/erase';
import { readGroup, type Group } from '../reads/group';
import { readOpen } from '../reads/still-open/open';
import { erasedName, mayErase, type EraseRefusal } from '../rules/erase';
import { strikeCard, type ToStrike } from './strike/card';
import { strikeCommissions } from './strike/commissions';
import { strikePapers } from './strike/papers';

/**
 * Strikes out what is known of somebody, under all of their entries, at their request. What the
 * books must keep stays: sales, entries, invoices, tax papers, and what was signed. Neither the
 * audit nor the command's key holds anything of the person.
 *
 * @returns how they are called from now on; refuses, in this order: not allowed, a key used for
 *   something else, nobody with that id, and then what {@link mayErase} refuses
 */
export async function eraseCollector(
  doer: Doer,
  { requestKey, collectorId, typed }: EraseInput,
): Promise<Result<string, EraseRefusal>> {
  const may = allow(doer.actor, 'collectors.erase');
  if (!may.ok) return may;
  const command = {
    ...{ key: requestKey, name: 'eraseCollector', staffId: doer.actor.id, at: doer.at },
    input: { collectorId },
  };
  return onceOnly<string, EraseRefusal>(command, async (tx) => {
    const group = await readGroup(tx, collectorId);
    if (!group) return refuse({ code: 'unknown_collector' });
    const { timeZone: zone } = await getGallery(tx);
    const { ids, erasedAt } = group;
    const { names, emails } = await knownAs(tx, group);
    const decided = mayErase(
      {
        name: names[0] ?? '',
        erasedOn: erasedAt && dayOf(erasedAt, zone),
        open: await readOpen(tx, { ids, at: doer.at, zone }),
      },
      typed,
    );
    if (!decided.ok) return decided;
    const number = await numberOfNext(tx);
    await strike(tx, doer, {
      ...{ livingId: group.livingId, ids, names, emails, on: dayOf(doer.at, zone) },
      erasedName: erasedName(number),
    });
    await recordAudit(tx, doer, {
      ...{ did: 'struck out what was known of a collector', subject: 'Collector' },
      ...{ subjectId: group.livingId, facts: { number, entries: ids.length } },
    });
    return ok(erasedName(number));
  });
}

async function strike(tx: Tx, doer: Doer, who: ToStrike): Promise<void> {
  await strikeCommissions(tx, doer, who);
  await strikePapers(tx, doer, who);
  await strikeCard(tx, doer, who);
}

/** Every name of theirs, that of the kept entry first, and every mail address. */
async function knownAs(
  tx: Tx,
  { livingId, ids }: Group,
): Promise<{ names: string[]; emails: string[] }> {
  const people = { select: { name: true, email: true } };
  const entries = await tx.collector.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, name: true, firm: true, email: true, people },
  });
  const mails = entries.flatMap((entry) => [
    entry.email,
    ...entry.people.map(({ email }) => email),
  ]);
  const living = entries.find(({ id }) => id === livingId);
  const more = entries.flatMap(({ name, firm, people }) => [
    ...(firm === null ? [name] : [name, firm]),
    ...people.map((person) => person.name),
  ]);
  return {
    names: [...new Set([living?.name ?? '', ...more])].filter((name) => name !== ''),
    emails: [...new Set(mails.filter((email) => email !== null))],
  };
}

/** People are counted, not entries: two that were one are struck out under one number. */
async function numberOfNext(tx: Tx): Promise<number> {
  const before = await tx.collector.count({
    where: { erasedAt: { not: null }, mergedIntoId: null },
  });
  return before + 1;
}
