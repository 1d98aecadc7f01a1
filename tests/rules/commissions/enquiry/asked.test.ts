import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { keepBodyInput } from '@/lib/commissions/input/enquiry/body';
import { changeRequestInput, logCommissionInput } from '@/lib/commissions/input/request';
import { bandOf, bandText, budgetBands } from '@/lib/commissions/rules/enquiry/bands';
import { bodySentence } from '@/lib/commissions/rules/enquiry/body-words';
import { isSameReferral, referralWords } from '@/lib/commissions/rules/enquiry/referral';
import { enquirySentences } from '@/lib/commissions/rules/enquiry/refusals';
import { stillToAsk, toAskSentence, type AskedFacts } from '@/lib/commissions/rules/enquiry/to-ask';
import { sunWords, yesNoWords } from '@/lib/commissions/rules/enquiry/words';

const requestKey = randomUUID();
const least = { requestKey, title: 'Herons for the stair', newName: 'Marit Oland' };

type Read = { success: true } | { success: false; error: { issues: { path: PropertyKey[] }[] } };
function faults(schema: { safeParse: (form: unknown) => Read }, form: unknown): string[] {
  const read = schema.safeParse(form);
  return read.success ? [] : read.error.issues.map((issue) => issue.path.join('.'));
}

describe('what is asked of a request', () => {
  test('yes, no and not known yet are three answers', () => {
    const answers = { freezes: 'yes', isDeadline: 'no', forFood: '' };
    expect(logCommissionInput.parse({ ...least, ...answers })).toMatchObject({
      ...{ freezes: true, isDeadline: false, forFood: null, broughtKnown: null, sun: null },
    });
    expect([true, false, null].map(yesNoWords)).toEqual(['yes', 'no', null]);
  });
  test('a band that is chosen says both figures, and more than what stands beside it', () => {
    const typed = { budgetFromCents: '1', budgetToCents: '' };
    const banded = { ...least, ...typed, budgetBand: '300000-500000' };
    expect(logCommissionInput.parse(banded)).toMatchObject({
      ...{ budgetFromCents: 300_000n, budgetToCents: 500_000n },
    });
    expect(logCommissionInput.parse({ ...banded, budgetBand: '' })).toMatchObject({
      ...{ budgetFromCents: 100n, budgetToCents: null },
    });
  });
  test.each([
    ['a fee for nobody', { broughtPercent: '10' }, ['broughtLetters']],
    ['a fee above all of it', { broughtLetters: 'Tom', broughtPercent: '101' }, ['broughtPercent']],
    ['a fee of three places', { broughtLetters: 'x', broughtPercent: '7.125' }, ['broughtPercent']],
    ['an answer that is none', { freezes: 'perhaps' }, ['freezes']],
    ['a sun we do not know', { sun: 'midnight' }, ['sun']],
    ['a height of nothing', { hangHeightUm: '0' }, ['hangHeightUm']],
    ['a clay body that is none', { bodyId: 'porcelain' }, ['bodyId']],
    ['too much about the way in', { access: 'x'.repeat(601) }, ['access']],
  ])('%s is told at its field', (_label, over, expected) => {
    expect(faults(logCommissionInput, { ...least, ...over })).toEqual(expected);
    const change = { requestKey, commissionId: randomUUID(), title: 'Herons', ...over };
    expect(faults(changeRequestInput, change)).toEqual(expected);
  });
  test('no fee for nobody is settled: nobody brought them', () => {
    expect(faults(logCommissionInput, { ...least, broughtPercent: '0' })).toEqual([]);
  });
});

describe('a clay body', () => {
  test('needs a name and nothing else', () => {
    const read = keepBodyInput.parse({ requestKey, name: ' Shore white ' });
    expect(read).toMatchObject({ name: 'Shore white', absorptionPercent: null, frostTested: null });
  });
  test.each([
    ['no name', { name: '' }, ['name']],
    ['water above 40 %', { absorptionPercent: '40.01' }, ['absorptionPercent']],
    ['water below nothing', { absorptionPercent: '-1' }, ['absorptionPercent']],
    ['water in words', { absorptionPercent: 'little' }, ['absorptionPercent']],
    ['three places', { shrinkagePercent: '12.125' }, ['shrinkagePercent']],
    ['as light as cork', { densityGPerCm3: '0.49' }, ['densityGPerCm3']],
    ['as heavy as lead', { densityGPerCm3: '5.01' }, ['densityGPerCm3']],
  ])('%s is told at its field', (_label, over, expected) => {
    expect(faults(keepBodyInput, { requestKey, name: 'Shore white', ...over })).toEqual(expected);
  });
  test('is told in one line', () => {
    expect(bodySentence({ absorptionPercent: '2.5', frostTested: false })).toBe(
      'vitreous; not tested in frost',
    );
    expect(bodySentence({ absorptionPercent: null, frostTested: null })).toContain('not known yet');
  });
});

const nothing: AskedFacts = {
  ...{ decides: null, pays: null, wallOwner: null, exposure: null, freezes: null, sun: null },
  ...{ body: null, wall: null, widthUm: null, heightUm: null, access: null, wishedOn: null },
  ...{ isDeadline: null, budgetFromCents: null, budgetToCents: null, broughtPercent: null },
};
const everything: AskedFacts = {
  ...{ decides: 'Both', pays: 'Both', wallOwner: 'They', exposure: 'outdoors', freezes: false },
  ...{ sun: 'some', body: {}, wall: 'brick', widthUm: 1, heightUm: 1, access: 'By the gate' },
  ...{ wishedOn: '2026-12-01', isDeadline: false, budgetFromCents: null, budgetToCents: 1n },
  broughtPercent: '0',
};

describe('what is still to ask', () => {
  test('everything that matters, and nothing once it is known', () => {
    expect(stillToAsk(nothing)).toHaveLength(10);
    expect(stillToAsk(everything)).toEqual([]);
    expect(toAskSentence([])).toBeNull();
  });
  test.each(Object.keys(everything))('%s left open is asked for', (name) => {
    const open = stillToAsk({ ...everything, [name]: null });
    // One end of a budget says enough.
    expect(open).toHaveLength(name === 'budgetFromCents' ? 0 : 1);
  });
  test('frost, sun and clay are no question indoors, a deadline none without a day', () => {
    const indoors = { ...everything, exposure: 'indoors' as const };
    expect(stillToAsk({ ...indoors, freezes: null, sun: null, body: null })).toEqual([]);
    expect(stillToAsk({ ...everything, wishedOn: null, isDeadline: null })).toEqual(['by when']);
  });
  test('is counted in words', () => {
    expect(toAskSentence(['by when'])).toContain('1 thing that matters is not known yet: by when.');
    expect(toAskSentence(['who pays', 'by when'])).toContain('2 things that matter are');
  });
});

describe('the bands', () => {
  const rates = [200_000n, 300_000n, 450_000n];
  test('of a square metre, by hand', () => {
    // Steps of 250.00; the last ends at one and a half of the deepest: 6,750.00.
    expect(budgetBands(rates, null).map(bandText)).toEqual([
      ...['200000-300000', '300000-450000', '450000-675000'],
    ]);
  });
  test('of 36 × 60 in, by hand', () => {
    // 0.9144 m × 1.524 m = 1.39354… m²: 2,787.09, 4,180.64, 6,270.96, 9,406.44; to the nearest 250.00.
    const size = { widthUm: 1_524_000, heightUm: 914_400 };
    expect(budgetBands(rates, size).map(bandText)).toEqual([
      ...['275000-425000', '425000-625000', '625000-950000'],
    ]);
  });
  test('each goes on where the one before ends; rates that are the same make fewer', () => {
    expect(budgetBands([300_000n, 300_000n, 300_000n], null)).toHaveLength(1);
    expect(budgetBands([], null)).toEqual([]);
    expect(budgetBands([0n, 0n, 0n], null)).toEqual([]);
  });
  test.each(['', '5-4', '4-4', 'x', '1-2-3', '-1-2', '1e3-2e3'])('"%s" is no band', (text) => {
    expect(bandOf(text)).toBeNull();
  });
});

describe('who brought them', () => {
  const by = { broughtById: 'a', name: 'Tomas Reyl', percent: '7.5', isKnown: true };
  test.each([
    [by, 'Tomas Reyl, 7.5 % of the work alone, the collector knows'],
    [{ ...by, isKnown: false }, 'Tomas Reyl, 7.5 % of the work alone, the collector does not know'],
    [{ ...by, percent: '0' }, 'Tomas Reyl, no fee'],
    [{ ...by, percent: null }, 'Tomas Reyl, the fee is not settled yet'],
    [{ ...by, broughtById: null, name: null, percent: '0' }, 'nobody, so no fee'],
    [{ broughtById: null, name: null, percent: null, isKnown: null }, null],
  ])('%j', (fact, words) => {
    expect(referralWords(fact)).toBe(words);
  });
  test('7.5 and 7.50 are the same, another one or another share is not', () => {
    expect(isSameReferral(by, { ...by, percent: '7.50' })).toBe(true);
    expect(isSameReferral(by, { ...by, percent: null })).toBe(false);
    expect(isSameReferral(by, { ...by, broughtById: 'b' })).toBe(false);
    expect(isSameReferral(by, { ...by, isKnown: null })).toBe(false);
  });
});

test('each refusal and each word is a full one', () => {
  const told = [
    enquirySentences.referral_settled({ code: 'referral_settled' }),
    enquirySentences.brought_unknown({ code: 'brought_unknown', letters: 'Tom' }),
    enquirySentences.brought_several({ code: 'brought_several', letters: 'T', names: ['A', 'B'] }),
    enquirySentences.brought_by_themselves({ code: 'brought_by_themselves', name: 'Marit Oland' }),
    enquirySentences.unknown_body({ code: 'unknown_body' }),
    enquirySentences.body_is_there({ code: 'body_is_there', name: 'Shore white' }),
    enquirySentences.body_is_on_tiles({ code: 'body_is_on_tiles', name: 'Shore white' }),
  ];
  for (const sentence of told) expect(sentence).toMatch(/^[A-Z].*\.$/);
  expect(Object.values(sunWords)).toHaveLength(3);
});
