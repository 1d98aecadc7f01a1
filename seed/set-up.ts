import { readFileSync } from 'node:fs';
import type { Actor, Role } from '@/lib/access/rules';
import { addDays, dateFromDay, dayStartAt, type Day } from '@/lib/dates/rules';
import { hashPassword } from '@/lib/access/password-hash';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { backRoomName, floorName, gallery, taxPlaces } from './scenario/gallery';

type Person = { signInName: string; name: string; role: Role; password: string };

/** What the rest of the demo stands on. */
export type SetUp = {
  floorId: string;
  backRoomId: string;
  taxPlaceId: string;
  owner: Actor;
  seller: Actor;
  maker: Actor;
};

/** The day on which the demo's trade begins: two years before it is loaded. */
export function beginningOf(today: Day): Day {
  return addDays(today, -730);
}

/** Makes the gallery, its places, its invented tax rates and the people who work there. */
export async function setUpGallery(tx: Tx, today: Day): Promise<SetUp> {
  const begun = beginningOf(today);
  const floorId = newId();
  const backRoomId = newId();
  await tx.place.createMany({
    data: [
      { id: floorId, name: floorName },
      { id: backRoomId, name: backRoomName },
    ],
  });
  const taxPlaceId = await keepTaxPlaces(tx, begun);
  await tx.gallery.create({
    data: { id: 1, ...gallery, isDemo: true, taxPlaceId, counterId: floorId },
  });
  const people = await addPeople(tx, begun);
  return { floorId, backRoomId, taxPlaceId, ...people };
}

async function keepTaxPlaces(tx: Tx, begun: Day): Promise<string> {
  const days = { beginning: begun, change: addDays(begun, 400) };
  const ids: string[] = [];
  for (const { name, rates } of taxPlaces) {
    const { id } = await tx.taxPlace.create({
      data: {
        name,
        state: gallery.state,
        rates: {
          create: rates.map((rate) => ({
            authority: rate.authority,
            ratePercent: rate.ratePercent,
            fromOn: dateFromDay(days[rate.from]),
            untilOn: 'until' in rate ? dateFromDay(days[rate.until]) : null,
          })),
        },
      },
    });
    ids.push(id);
  }
  const [home] = ids;
  invariant(home, 'The gallery has a place with tax rates.');
  return home;
}

async function addPeople(tx: Tx, begun: Day): Promise<Pick<SetUp, 'owner' | 'seller' | 'maker'>> {
  const file = new URL('./people.json', import.meta.url);
  const people = JSON.parse(readFileSync(file, 'utf8')) as Person[];
  const actors = new Map<Role, Actor>();
  for (const { signInName, name, role, password } of people) {
    const id = newId();
    const passwordHash = await hashPassword(password);
    const createdAt = dayStartAt(begun, gallery.timeZone);
    await tx.staff.create({
      data: { id, signInName, name, roles: [role], passwordHash, createdAt },
    });
    actors.set(role, { id, name, roles: [role] });
  }
  const [owner, seller, maker] = [actors.get('owner'), actors.get('gallery'), actors.get('maker')];
  invariant(owner && seller && maker, 'The demo has an owner, a seller and a maker.');
  return { owner, seller, maker };
}
