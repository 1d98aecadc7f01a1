import { describe, expect, test } from 'vitest';
import { partFault, proposeFor, reckonedWeightG } from '@/lib/sending/rules/boxes';
import { countsWords, decideTerms, termsOn, type CarrierTerms } from '@/lib/sending/rules/carriers';
import { reckonShipment, sendingCautions, wayCautions } from '@/lib/sending/rules/reckoning';
import { reckoningSteps } from '@/lib/sending/rules/reckoning-steps';
import { aboutWeightG } from '@/lib/sending/rules/to-go';
import { readPieces } from '@/lib/sending/rules/typed/pieces';

const inch = 25_400;
const lb = 453.592_37;

const proposed = (text: string) => {
  const pieces = readPieces(text, 'in');
  const boxes = pieces.ok ? proposeFor(pieces.value) : null;
  return boxes?.ok ? boxes.value : [];
};

describe('boxes that are proposed', () => {
  test('two tiles of one line lie together, told once', () => {
    const [box, ...more] = proposed('2 × Tern; 6 × 6 × 1/2 in; 1 lb 8 oz');
    expect(more).toEqual([]);
    expect(box?.kind).toBe('double_box');
    expect(box?.contents).toMatchObject([{ pieces: 2, words: 'Tern', layer: 1 }]);
  });

  test('their sides are made to an eighth of an inch, never smaller', () => {
    for (const { lengthUm, widthUm, heightUm } of proposed('Moss; 10 1/16 × 9 3/16 × 1 in; 5 lb')) {
      for (const side of [lengthUm, widthUm, heightUm]) expect(side % 3_175).toBe(0);
    }
  });

  test('more than 99 boxes are refused', () => {
    const pieces = readPieces('100 × Heron; 30 × 40 × 3 in; 60 lb', 'in');
    expect(pieces.ok && proposeFor(pieces.value)).toMatchObject({
      refusal: { code: 'too_many_boxes', boxes: 100 },
    });
  });
});

test('a box by hand weighs its make and its contents; a crate more than a box', () => {
  const sides = { lengthUm: 40 * inch, widthUm: 30 * inch, heightUm: 10 * inch };
  const contents = [{ pieces: 2, weightG: 10_000 }];
  const box = reckonedWeightG({ ...sides, kind: 'box', paddingUm: 50_800 }, contents);
  const crate = reckonedWeightG({ ...sides, kind: 'crate', paddingUm: 50_800 }, contents);
  expect(box).toBeGreaterThan(20_000);
  expect(crate).toBeGreaterThan(box + 8_000);
  const tiny = { lengthUm: 1, widthUm: 1, heightUm: 1, kind: 'crate', paddingUm: 304_800 } as const;
  expect(reckonedWeightG(tiny, [])).toBeGreaterThan(0);
});

describe('parts in boxes', () => {
  const part = (partNumber: number | null) => ({ partNumber });

  test('what is no part, and what lies nowhere else, can lie here', () => {
    expect(partFault([part(null), part(3)], [{ partNumber: 4, box: 1 }], 6)).toBeNull();
    expect(partFault([part(300)], [], null)).toBeNull();
  });

  test('a part lies in one box, and is on the drawing', () => {
    expect(partFault([part(4)], [{ partNumber: 4, box: 1 }], 6)).toEqual({
      ...{ code: 'part_elsewhere', partNumber: 4, box: 1 },
    });
    expect(partFault([part(7)], [], 6)).toEqual({ code: 'no_such_part', partNumber: 7, parts: 6 });
  });
});

const terms: CarrierTerms = {
  ...{ id: 'a', name: 'Parcel', divisorIn3: 139, sides: 'up', overIn3: 0, isFreight: false },
  ...{ reportDays: 5, claimDays: 60, coverCents: 10_000n, holdsFromOn: '2026-01-01', source: '' },
};

describe('terms of carriers', () => {
  test('of each name the newest that has begun holds', () => {
    const all = [
      { name: 'B', holdsFromOn: '2026-01-01' },
      { name: 'A', holdsFromOn: '2025-01-01' },
      { name: 'A', holdsFromOn: '2026-06-01' },
      { name: 'A', holdsFromOn: '2027-01-01' },
      { name: 'C', holdsFromOn: '2027-01-01' },
    ] as const;
    expect(termsOn(all, '2026-06-01')).toEqual([all[2], all[0]]);
    expect(termsOn(all, '2026-05-31')).toEqual([all[1], all[0]]);
  });

  test.each([
    ['the same name and day', { name: 'Parcel', isBySize: true }, 'holds_already'],
    ['size without a divisor', { divisorIn3: null, isBySize: true }, 'size_without_divisor'],
  ])('refuses %s', (_label, over, code) => {
    const known = [{ name: 'Parcel', holdsFromOn: '2026-01-01' }] as const;
    const asked = { ...terms, name: 'Other', ...over };
    expect(decideTerms(asked, known)).toMatchObject({ ok: false, refusal: { code } });
  });

  test.each([
    [{}, 'by size ÷ 139, sides rounded up to an inch, or the scale'],
    [
      { divisorIn3: 166, sides: 'nearest', overIn3: 1_728 } as const,
      'by size ÷ 166, sides to the nearest inch, only above 1,728 in³, or the scale',
    ],
    [{ divisorIn3: null }, 'by the scale'],
    [{ isFreight: true, divisorIn3: null }, 'by freight class'],
  ])('with %j it counts %s', (over, words) => {
    expect(countsWords({ ...terms, ...over })).toBe(words);
  });
});

describe('what a shipment comes to', () => {
  const box = (weightLb: number, scaleG: number | null = null) => ({
    ...{ lengthUm: 24 * inch, widthUm: 18 * inch, heightUm: 8 * inch },
    ...{ reckonedG: Math.round(weightLb * lb), scaleG },
  });

  test('each box by its size or weight, and all together', () => {
    const reckoning = reckonShipment([box(20), box(30)], terms, '2026-11-20');
    expect(reckoning.boxes.map(({ billable }) => billable?.billableLb)).toEqual([25, 30]);
    expect(reckoning).toMatchObject({ billableLb: 55, unweighed: 2, freight: null });
    expect(reckoningSteps([box(20), box(30)], reckoning).at(-1)).toBe('Together 55 lb.');
  });

  test('the scale goes before the reckoning', () => {
    const reckoning = reckonShipment([box(20, Math.round(40 * lb))], terms, '2026-11-20');
    expect(reckoning).toMatchObject({ billableLb: 40, unweighed: 0 });
  });

  test('freight goes by its class, and nothing else is charged', () => {
    const freight = { ...terms, isFreight: true, divisorIn3: null };
    const reckoning = reckonShipment([box(20), box(20)], freight, '2026-11-20');
    expect(reckoning).toMatchObject({ billableLb: null, freight: { class: 92.5 } });
    expect(reckoningSteps([box(20), box(20)], reckoning)).toHaveLength(3);
  });

  test('without a carrier only the weight is told', () => {
    const reckoning = reckonShipment([box(20)], null, '2026-11-20');
    expect(reckoning).toMatchObject({ billableLb: null, freight: null });
    expect(reckonShipment([], terms, '2026-11-20')).toMatchObject({ weightG: 0, billableLb: null });
  });

  test('cautions: heavy, beyond a parcel, worth more than the carrier stands for, unweighed', () => {
    const reckoning = reckonShipment([box(160)], terms, '2026-11-20');
    const cautions = sendingCautions({ reckoning, insuredCents: 90_000n, insuredBy: '' }, terms);
    expect(cautions.map((words) => words.slice(0, 20))).toEqual([
      'Over 150 lb: too hea',
      'Box 1 is over 150 lb',
      'It is worth $900.00.',
      'A weight that nobody',
    ]);
    const light = reckonShipment([box(20, 9_000)], terms, '2026-11-20');
    const insured = { reckoning: light, insuredCents: 90_000n, insuredBy: 'our insurer' };
    expect(sendingCautions(insured, terms)).toEqual([]);
  });
});

test('boxes that do not go through the narrowest place on the way are told', () => {
  const box = (width: number, height: number) => ({
    ...{ lengthUm: 60 * inch, widthUm: width * inch, heightUm: height * inch },
  });
  const door = { widthUm: 30 * inch, heightUm: 80 * inch };
  expect(wayCautions([box(40, 10), box(40, 29), box(40, 31)], door, 'in')).toEqual([
    'Box 2 goes through the narrowest place on the way, 30 in wide, 80 in high, with little room.',
    'Box 3 does not go through the narrowest place on the way, 30 in wide, 80 in high.',
  ]);
});

test('a piece that nobody weighed weighs its volume of stoneware', () => {
  const sides = { widthUm: 254_000, heightUm: 254_000, depthUm: 11_000 };
  expect(aboutWeightG(sides)).toBe(1_348);
});
