import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay, dayOf } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type {
  AddressInput,
  ConsentInput,
  NoteInput,
  PersonInput,
  TakeOffInput,
} from '../input/card';
import type { Group } from '../reads/group';
import { cardCommand, tellCard, type Carded } from './card-command';

/** Under which entry a row of the card stands: its own when it is there, the kept one when new. */
type Standing = { id: string; collectorId: string };

/**
 * Writes down somebody of a household or a firm, or changes what is known of them.
 *
 * @returns the person's id; refuses as {@link cardCommand}, then one who was taken off the card
 */
export async function keepPerson(doer: Doer, input: PersonInput): Carded {
  return cardCommand(doer, { name: 'keepPerson', input }, async (tx, group) => {
    const { name, said, part, email, phone, reach, personId } = input;
    const data = { name, said, part, email, phone, reach };
    if (personId !== null) {
      const where = { id: personId, collectorId: { in: [...group.ids] } };
      const { count } = await tx.collectorPerson.updateMany({ where, data });
      if (count === 0) return refuse({ code: 'not_on_the_card' });
    }
    const row = standingOf(personId, group);
    if (personId === null)
      await tx.collectorPerson.create({ data: { ...data, ...row, at: doer.at } });
    return told(tx, doer, group, {
      id: row.id,
      did: personId ? 'changed somebody of a collector' : 'wrote down somebody of a collector',
    });
  });
}

/**
 * Writes down a further address, or changes one.
 *
 * @returns the address's id; refuses as {@link cardCommand}, then one that was taken off the card
 */
export async function keepAddress(doer: Doer, input: AddressInput): Carded {
  return cardCommand(doer, { name: 'keepAddress', input }, async (tx, group) => {
    const { label, street, city, state, postcode, note, addressId } = input;
    const data = { label, street, city, state, postcode, note };
    if (addressId !== null) {
      const where = { id: addressId, collectorId: { in: [...group.ids] } };
      const { count } = await tx.collectorAddress.updateMany({ where, data });
      if (count === 0) return refuse({ code: 'not_on_the_card' });
    }
    const row = standingOf(addressId, group);
    if (addressId === null) {
      await tx.collectorAddress.create({ data: { ...data, ...row, at: doer.at } });
    }
    return told(tx, doer, group, {
      id: row.id,
      did: addressId ? 'changed an address of a collector' : 'wrote down an address of a collector',
    });
  });
}

/**
 * Writes down something to remember, or changes it; then it carries who changed it and when.
 *
 * @returns the note's id; refuses as {@link cardCommand}, then one that was taken off the card
 */
export async function keepNote(doer: Doer, input: NoteInput): Carded {
  return cardCommand(doer, { name: 'keepNote', input }, async (tx, group) => {
    const { words, noteId } = input;
    const data = { words, staffId: doer.actor.id, at: doer.at };
    if (noteId !== null) {
      const where = { id: noteId, collectorId: { in: [...group.ids] } };
      const { count } = await tx.collectorNote.updateMany({ where, data });
      if (count === 0) return refuse({ code: 'not_on_the_card' });
    }
    const row = standingOf(noteId, group);
    if (noteId === null) await tx.collectorNote.create({ data: { ...data, ...row } });
    return told(tx, doer, group, {
      id: row.id,
      did: noteId ? 'changed a note on a collector' : 'wrote a note on a collector',
    });
  });
}

/**
 * Writes down a yes or a no as it was heard: by whom, how and on which day. Nothing said before is
 * changed; the last said holds.
 *
 * @returns the id of what was said; refuses as {@link cardCommand}, then a day that has not come
 */
export async function sayConsent(doer: Doer, input: ConsentInput): Carded {
  return cardCommand(doer, { name: 'sayConsent', input }, async (tx, group) => {
    const { timeZone } = await getGallery(tx);
    if (input.saidOn > dayOf(doer.at, timeZone)) return refuse({ code: 'said_in_the_future' });
    const { to, said, how, saidOn } = input;
    const id = newId();
    await tx.consent.create({
      data: {
        ...{ id, collectorId: group.livingId, to, given: said === 'yes', how },
        ...{ saidOn: dateFromDay(saidOn), staffId: doer.actor.id, at: doer.at },
      },
      select: { id: true },
    });
    const did = said === 'yes' ? 'heard a yes of a collector' : 'heard a no of a collector';
    await tellCard(tx, doer, { collectorId: group.livingId, did, facts: { to, how, saidOn } });
    return ok(id);
  });
}

/**
 * Takes somebody, an address, a note or a piece off the card.
 *
 * @returns the id of what was taken off; refuses as {@link cardCommand}, then what is no longer on
 *   the card, and an address where a piece still hangs
 */
export async function takeOff(doer: Doer, input: TakeOffInput): Carded {
  return cardCommand(doer, { name: 'takeOff', input }, async (tx, group) => {
    const { part, partId } = input;
    const hanging = part === 'address' ? await hangingAt(tx, partId) : [];
    if (hanging.length > 0) return refuse({ code: 'pieces_hang_there', titles: hanging });
    const where = { id: partId, collectorId: { in: [...group.ids] } };
    const { count } = await takenOff[part](tx, where);
    if (count === 0) return refuse({ code: 'not_on_the_card' });
    return told(tx, doer, group, { id: partId, did: takenOffWords[part] });
  });
}

type Row = { id: string; collectorId: { in: string[] } };

const takenOff: Record<TakeOffInput['part'], (tx: Tx, where: Row) => Promise<{ count: number }>> = {
  person: (tx, where) => tx.collectorPerson.deleteMany({ where }),
  address: (tx, where) => tx.collectorAddress.deleteMany({ where }),
  note: (tx, where) => tx.collectorNote.deleteMany({ where }),
  owned: (tx, where) => tx.ownedPiece.deleteMany({ where }),
};

const takenOffWords: Record<TakeOffInput['part'], string> = {
  person: 'took somebody off a collector’s card',
  address: 'took an address off a collector’s card',
  note: 'took a note off a collector’s card',
  owned: 'took a place off a collector’s card',
};

async function hangingAt(tx: Tx, addressId: string): Promise<string[]> {
  const rows = await tx.ownedPiece.findMany({
    where: { addressId },
    select: { title: true },
    orderBy: [{ title: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ title }) => title);
}

function standingOf(id: string | null, { livingId }: Group): Standing {
  return { id: id ?? newId(), collectorId: livingId };
}

async function told(
  tx: Tx,
  doer: Doer,
  group: Group,
  { id, did }: { id: string; did: string },
): Carded {
  await tellCard(tx, doer, { collectorId: group.livingId, did });
  return ok(id);
}
