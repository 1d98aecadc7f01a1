import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import type { ConsentSaid } from '../rules/consent';
import { readConsents } from './consents';
import { idsOf } from './group';

const rowsMost = 500;

/** Somebody of a household or a firm. */
export type PersonOnCard = {
  id: string;
  name: string;
  /** How the name is said; empty when nobody wrote it down. */
  said: string;
  part: string;
  email: string | null;
  phone: string | null;
  /** How they like to be reached. */
  reach: string;
};

/** A further address. */
export type AddressOnCard = {
  id: string;
  label: string;
  street: string;
  city: string;
  state: string;
  postcode: string;
  note: string;
};

/** A yes or a no, with who heard it. */
export type ConsentOnCard = ConsentSaid & { id: string; how: string; heardBy: string };

/** Something to remember, with who wrote it and when. */
export type NoteOnCard = { id: string; words: string; writtenBy: string; at: Date };

/** What stands on somebody's card besides their papers. */
export type Card = {
  people: PersonOnCard[];
  addresses: AddressOnCard[];
  /** All that was said, the last first. */
  consents: ConsentOnCard[];
  notes: NoteOnCard[];
};

/** People, addresses, consents and notes of somebody, of both names where two are one. */
export async function getCard(actor: Actor, collectorId: string): Promise<Card> {
  assertAllowed(actor, 'collectors.see');
  const theirs = { collectorId: { in: [...(await idsOf(db(), collectorId))] } };
  const [people, addresses, consents, notes] = await Promise.all([
    db().collectorPerson.findMany({
      where: theirs,
      omit: { collectorId: true, at: true },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
      take: rowsMost,
    }),
    db().collectorAddress.findMany({
      where: theirs,
      omit: { collectorId: true, at: true },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
      take: rowsMost,
    }),
    readConsents(db(), collectorId),
    db().collectorNote.findMany({
      where: theirs,
      select: { id: true, words: true, staffId: true, at: true },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: rowsMost,
    }),
  ]);
  const names = await namesOfStaff([...consents, ...notes].map(({ staffId }) => staffId));
  return {
    ...{ people, addresses },
    consents: consents.map(({ staffId, ...said }) => ({ ...said, heardBy: names(staffId) })),
    notes: notes.map(({ staffId, ...note }) => ({ ...note, writtenBy: names(staffId) })),
  };
}

async function namesOfStaff(ids: readonly string[]): Promise<(id: string) => string> {
  const staff = await db().staff.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, name: true },
  });
  const names = new Map(staff.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? 'somebody who no longer works here';
}
