import { randomUUID } from 'node:crypto';
import type { Doer } from '@/lib/access/rules';
import { keepCollectorInput } from '@/lib/collectors/input';
import {
  addressInput,
  consentInput,
  noteInput,
  ownedInput,
  personInput,
} from '@/lib/collectors/input/card';
import { keepCollector } from '@/lib/collectors/writes';
import { keepAddress, keepNote, keepPerson, sayConsent } from '@/lib/collectors/writes/card';
import { keepOwned } from '@/lib/collectors/writes/owned';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';
import type { Result } from '@/lib/platform/result';
import { cards, twice, type CardStory } from './scenario/collectors-cards';
import { gallery } from './scenario/gallery';
import type { SetUp } from './set-up';

type Demo = { today: Day; setUp: SetUp; collectors: ReadonlyMap<string, string> };

/** Fills some cards: people, addresses, what they allow, notes, where pieces hang; and one twice. */
export async function fillCards(demo: Demo): Promise<void> {
  for (const story of cards) await fillCard(demo, story);
  const input = keepCollectorInput.parse({ requestKey: randomUUID(), ...twice });
  told(await keepCollector(doerOn(demo, 12), input));
}

async function fillCard(demo: Demo, story: CardStory): Promise<void> {
  const collectorId = demo.collectors.get(story.name);
  invariant(collectorId, `${story.name} is a collector of the demo.`);
  const doer = doerOn(demo, story.daysAgo);
  const form = () => ({ requestKey: randomUUID(), collectorId });
  for (const person of story.people) {
    told(await keepPerson(doer, personInput.parse({ ...form(), ...person })));
  }
  const addressIds: string[] = [];
  for (const address of story.addresses) {
    addressIds.push(told(await keepAddress(doer, addressInput.parse({ ...form(), ...address }))));
  }
  for (const { daysAgo, ...said } of story.consents) {
    const saidOn = addDays(demo.today, -daysAgo);
    const input = consentInput.parse({ ...form(), ...said, saidOn });
    told(await sayConsent(doerOn(demo, daysAgo), input));
  }
  for (const words of story.notes) {
    told(await keepNote(doer, noteInput.parse({ ...form(), words })));
  }
  await hangPieces(doer, { collectorId, hangs: story.hangs, addressId: addressIds[0] ?? '' });
}

type Hanging = { collectorId: string; hangs: readonly string[]; addressId: string };

/** The pieces that they bought last hang where the story says; one more they told of. */
async function hangPieces(doer: Doer, { collectorId, hangs, addressId }: Hanging): Promise<void> {
  const bought = await db().saleLine.findMany({
    where: { kind: 'piece', sale: { collectorId }, returned: { none: {} } },
    select: { id: true },
    orderBy: [{ sale: { number: 'desc' } }, { position: 'asc' }],
    take: hangs.length,
  });
  for (const [at, where] of hangs.entries()) {
    const saleLineId = bought[at]?.id;
    const of = saleLineId ? { saleLineId } : { title: 'A small heron, bought at a fair' };
    const input = { requestKey: randomUUID(), collectorId, ...of, hangs: where };
    const place = at === hangs.length - 1 ? { ...input, addressId } : input;
    told(await keepOwned(doer, ownedInput.parse(place)));
  }
}

function doerOn({ today, setUp }: Demo, daysAgo: number): Doer {
  return {
    actor: setUp.seller,
    at: instantOf(addDays(today, -daysAgo), '15:00', gallery.timeZone),
  };
}

function told<Value>(result: Result<Value, { code: string }>): Value {
  invariant(result.ok, 'The demo is not refused.');
  return result.value;
}
