import { describe, expect, test } from 'vitest';
import {
  aMonth,
  leadOf,
  makeNext,
  usualLosses,
  type SkuToMake,
} from '@/lib/reports/rules/make-next';
import { routes } from '../../helpers/usual-routes';

const steps = routes.press_moulded;
const aTile = (over: Partial<SkuToMake> = {}): SkuToMake => ({
  kind: 'relief_tile',
  technique: 'press_moulded',
  priceCents: 18_000n,
  here: 0,
  elsewhere: 0,
  held: 0,
  ordered: 0,
  inMaking: 0,
  sold: 36,
  daysOnOffer: 300,
  editionLeft: null,
  ...over,
});

test('a route takes the sum of its steps by three figures each', () => {
  const step = { name: 'drying', peg: 'dry', caution: '' } as const;
  const lead = leadOf([
    { ...step, shortestDays: 2, likelyDays: 5, longestDays: 14 },
    { ...step, shortestDays: 1, likelyDays: 1, longestDays: 7 },
  ]);
  expect(lead.days).toBeCloseTo(6 + 2, 12);
  expect(lead.sdDays).toBeCloseTo(Math.sqrt(4 + 1), 12);
  expect(leadOf([])).toEqual({ days: 0, sdDays: 0 });
});

describe('what to make of a tile that sells three or four a month', () => {
  test('with none left, a lot that lasts its making and a month more, with spare ones', () => {
    const made = makeNext(aTile(), 0.1, steps);
    expect(made.free).toBe(0);
    expect(made.wanted).toBeGreaterThan(made.reorderPoint);
    expect(made.start).toBeGreaterThan(made.wanted);
    expect(made.lost).toBeCloseTo(made.rate.perDay * made.lead.days, 9);
    expect(made.lostCents).toBe(BigInt(Math.round(made.lost * 1_000)) * 18n);
  });

  test('with enough free, nothing', () => {
    const { reorderPoint } = makeNext(aTile(), 0.1, steps);
    const enough = makeNext(aTile({ here: reorderPoint + 1 }), 0.1, steps);
    expect([enough.wanted, enough.start]).toEqual([0, 0]);
    expect(makeNext(aTile({ here: reorderPoint }), 0.1, steps).wanted).toBeGreaterThan(0);
  });

  test('what is elsewhere and in the making counts, what is held and ordered does not', () => {
    const sku = aTile({ here: 3, elsewhere: 2, inMaking: 6, held: 1, ordered: 4 });
    expect(makeNext(sku, 0.1, steps).free).toBe(6);
  });

  test('more promised than there is makes more wanted, and loses no more than all', () => {
    const none = makeNext(aTile(), 0.1, steps);
    const promised = makeNext(aTile({ ordered: 4 }), 0.1, steps);
    expect(promised.wanted).toBe(none.wanted + 4);
    expect(promised.lost).toBe(none.lost);
  });
});

test('an edition is never made beyond its size', () => {
  expect(makeNext(aTile({ editionLeft: 2 }), 0.1, steps).wanted).toBe(2);
  expect(makeNext(aTile({ editionLeft: 0 }), 0.1, steps)).toMatchObject({ wanted: 0, start: 0 });
  expect(makeNext(aTile({ editionLeft: -1 }), 0.1, steps).wanted).toBe(0);
});

test('what never sells, of a kind that never sells, is not made again', () => {
  const made = makeNext(aTile({ sold: 0 }), 0, steps);
  expect([made.wanted, made.lostCents]).toEqual([0, 0n]);
});

test('the working carries its numbers', () => {
  const { working } = makeNext(aTile({ here: 1, held: 1 }), 0.1, steps);
  expect(working[0]).toMatch(/^36 sold on 300 days .* sells 3\.0 a month\.$/);
  expect(working).toContainEqual(expect.stringContaining('1 here + 0 elsewhere'));
  expect(working.every((step) => step.endsWith('.'))).toBe(true);
});

test('losses are shares of every route', () => {
  expect(Object.keys(usualLosses).toSorted()).toEqual(Object.keys(routes).toSorted());
  const shares = Object.values(usualLosses).flat();
  expect(shares.every((loss) => loss >= 0 && loss < 0.5)).toBe(true);
});

test('a rate is told by the month', () => {
  expect([aMonth(0), aMonth(0.1), aMonth(0.002)]).toEqual(['0.0', '3.0', '0.06']);
});
