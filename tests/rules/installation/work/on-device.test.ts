import { expect, test } from 'vitest';
import { workEntryInput, type WorkEntrySent } from '@/lib/installation/input/work/entry';
import { dayHere, entryWords, type KeptEntry } from '@/lib/installation/rules/work/on-device';
import { theWall, wayIn, weightSaid, whoGoes } from '@/lib/installation/rules/work/order-words';
import { isTicked, type Tick } from '@/lib/installation/rules/work/ticks';

const mine = {
  id: '0199d2a0-0000-7000-8000-000000000001',
  appointmentId: '0199d2a0-0000-7000-8000-00000000000a',
  madeById: '0199d2a0-0000-7000-8000-00000000000b',
  at: '2026-05-04T16:00:00.000Z',
};
const known = {
  ...{ ticks: [], weightG: 50_000, isWeighed: false },
  ...{ hasFixingsPicture: false, hasPictureInPlace: false },
};
const kept = (entry: WorkEntrySent, standing: KeptEntry['standing'] = 'waiting'): KeptEntry => ({
  ...{ entry, standing, sentence: '' },
});
const tick = { ...mine, did: 'tick', item: 'seated', isDone: true } as const;

test('what was ticked here counts before it is sent, and what was refused does not', () => {
  const here = dayHere(known, [kept(tick)]);
  expect(isTicked(here.held, 'seated')).toBe(true);
  expect([...here.waiting]).toEqual(['seated']);
  expect(isTicked(dayHere(known, [kept(tick, 'refused')]).held, 'seated')).toBe(false);
  const sent = dayHere(known, [kept(tick, 'sent')]);
  expect(isTicked(sent.held, 'seated')).toBe(true);
  expect(sent.waiting.size).toBe(0);
});

test('once the gallery knows a tick it counts as the gallery dated it', () => {
  const ahead = { ...tick, at: '2031-01-01T00:00:00.000Z' };
  const at = (hour: number) => new Date(Date.UTC(2026, 4, 4, hour));
  const there: Tick = {
    ...{ id: mine.id, item: 'seated', isDone: true, words: '' },
    ...{ tickedAt: at(16), receivedAt: at(16) },
  };
  const later: Tick = { ...there, id: 'other', isDone: false, tickedAt: at(17) };
  const here = dayHere({ ...known, ticks: [there, later] }, [kept(ahead, 'sent')]);
  expect(isTicked(here.held, 'seated')).toBe(false);
});

test('a weight, pictures and notes count from the device', () => {
  const picture = { ...mine, did: 'picture' } as const;
  const here = dayHere(known, [
    kept({ ...mine, did: 'weigh', weightG: 44_000 }),
    kept({ ...mine, did: 'weigh', weightG: 45_000 }),
    kept({ ...picture, of: 'fixings' }),
    kept({ ...picture, of: 'in_place' }, 'refused'),
    kept({ ...mine, did: 'tick', item: 'note', isDone: true, words: 'The dog is kind' }),
  ]);
  expect(here).toMatchObject({
    ...{ weightG: 45_000, isWeighed: true, hasFixingsPicture: true, hasPictureInPlace: false },
  });
  expect(here.notes.map(({ words }) => words)).toEqual(['The dog is kind']);
  expect([...here.waiting]).toEqual(['weigh', 'fixings', mine.id]);
});

test('what waits is told in words', () => {
  const names = new Map([['seated', 'It sits on the cleat']]);
  const snag = { ...mine, did: 'snag', words: 'Touch up', mendById: mine.id } as const;
  const sign: WorkEntrySent = {
    ...mine,
    did: 'sign',
    signedAs: 'typed',
    ...{ signedName: 'Marit Oland', parts: null },
    ...{ careGiven: true, readOn: '2026-05-04', read: 'All of it' },
  };
  const all: WorkEntrySent[] = [
    tick,
    { ...tick, isDone: false },
    { ...tick, item: 'no_scale', words: 'It broke' } as const,
    { ...mine, did: 'weigh', weightG: 1 } as const,
    { ...mine, did: 'picture', of: 'fixings' } as const,
    { ...mine, did: 'picture', of: 'in_place' } as const,
    { ...snag, mendByOn: '2026-05-20' },
    sign,
  ];
  expect(all.map((entry) => entryWords(entry, names))).toEqual([
    'It sits on the cleat',
    'Not done after all: It sits on the cleat',
    'Noted: It broke',
    'The weight from the scale',
    'A picture of the fixings',
    'A picture in place',
    'To be put right: Touch up',
    'The signature of Marit Oland',
  ]);
});

test.each([
  ['a weight of zero', { did: 'weigh', weightG: 0 }],
  ['an absurd weight', { did: 'weigh', weightG: 1e12 }],
  ['a broken weight', { did: 'weigh', weightG: 1.5 }],
  ['a weight in words', { did: 'weigh', weightG: '50 lb' }],
  ['an item nobody knows', { did: 'tick', item: 'toString', isDone: true }],
  ['a snag without words', { did: 'snag', words: ' ', mendById: mine.id, mendByOn: '2026-05-20' }],
  [
    'a snag by a day that is none',
    { did: 'snag', words: 'x', mendById: mine.id, mendByOn: '2026-02-30' },
  ],
  ['a day that is no instant', { ...tick, at: 'yesterday' }],
  ['a key that is none', { ...tick, id: 'one' }],
  ['something else', { did: 'sell' }],
])('%s is no entry', (_label, change) => {
  expect(workEntryInput.safeParse({ ...mine, ...change }).success).toBe(false);
});

test('what the order says is told as far as it is known', () => {
  expect(whoGoes({ lead: 'Oriel', others: [], travelMinutes: 0 })).toBe('Oriel, alone');
  expect(whoGoes({ lead: 'Oriel', others: ['Tomas'], travelMinutes: 40 })).toBe(
    'Oriel leads, with Tomas; 40 minutes there',
  );
  const way = {
    access: 'Gate at the back.',
    steps: 1,
    narrowWidthUm: 762_000,
    lift: '',
    floor: '',
  };
  expect(wayIn({ ...way, narrowHeightUm: null, hasOutlet: false }, 'in')).toBe(
    'Gate at the back; one step; 30 in wide at the narrowest; no power at the wall',
  );
  expect(wayIn(null, 'in')).toBe('');
  const wall = { kind: 'hanging', facts: { wall: 'brick' } } as const;
  expect(theWall({ ...wall, survey: { provedHow: 'Drill dust.', backing: '' } })).toBe(
    'brick; proved by drill dust',
  );
  expect(theWall({ ...wall, facts: { wall: null }, survey: null })).toBe('');
  expect(weightSaid({ weightG: 45_360, from: 'scale' }, 'in')).toBe('100 lb, from the scale');
  expect(weightSaid({ weightG: 45_360, from: 'plan' }, 'in')).toContain('about 100 lb');
  expect(weightSaid(null, 'in')).toBeNull();
});
