import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { agreeInput, takePaymentInput } from '@/lib/commissions/input/money';
import { changeRequestInput, logCommissionInput } from '@/lib/commissions/input/request';
import { approveInput } from '@/lib/commissions/input/colours/showing';

const requestKey = randomUUID();
const commissionId = randomUUID();
const least = { requestKey, title: 'Herons for the stair', newName: 'Marit Oland' };

function faults(schema: { safeParse: (form: unknown) => Read }, form: unknown): string[] {
  const read = schema.safeParse(form);
  return read.success ? [] : read.error.issues.map((issue) => issue.path.join('.'));
}
type Read = { success: true } | { success: false; error: { issues: { path: PropertyKey[] }[] } };

describe('a request', () => {
  test('needs a title and somebody, and nothing else', () => {
    const read = logCommissionInput.parse(least);
    expect(read).toMatchObject({ collectorId: null, wall: null, widthUm: null, wishedOn: null });
    expect(read.pictures).toEqual([]);
  });
  test('what is left empty is "not known yet"', () => {
    const empty = { wall: '', widthUm: ' ', wishedOn: '', budgetToCents: '', room: '' };
    expect(logCommissionInput.parse({ ...least, ...empty })).toMatchObject({
      wall: null,
      widthUm: null,
      wishedOn: null,
      budgetToCents: null,
      room: null,
    });
  });
  test('measures carry their own unit; a bare number is the gallery’s', () => {
    const measured = { ...least, widthUm: '60', heightUm: '920 mm' };
    const inches = logCommissionInput.parse({ ...measured, lengthUnit: 'in' });
    const metric = logCommissionInput.parse({ ...measured, lengthUnit: 'mm' });
    expect([inches.widthUm, inches.heightUm]).toEqual([1_524_000, 920_000]);
    expect([metric.widthUm, metric.heightUm]).toEqual([60_000, 920_000]);
  });
  test.each([
    ['nobody', { newName: '' }, ['newName']],
    ['nobody and a size that is none', { newName: '', widthUm: 'x' }, ['widthUm', 'newName']],
    ['no title', { title: ' ' }, ['title']],
    ['a size that is none', { widthUm: 'large' }, ['widthUm']],
    [
      'a budget that goes down',
      { budgetFromCents: '500', budgetToCents: '400' },
      ['budgetToCents'],
    ],
    ['a picture that is none', { pictures: 'wall.jpg' }, ['pictures.0']],
    ['a wall we do not know', { wall: 'cheese' }, ['wall']],
  ])('%s is told at its field', (_label, over, expected) => {
    expect(faults(logCommissionInput, { ...least, ...over })).toEqual(expected);
  });
  test('one picture or several; an empty one is none; nine are too many', () => {
    const one = new Blob(['x']);
    expect(logCommissionInput.parse({ ...least, pictures: one }).pictures).toHaveLength(1);
    const two = [one, new Blob([]), one];
    expect(logCommissionInput.parse({ ...least, pictures: two }).pictures).toHaveLength(2);
    const nine = Array.from({ length: 9 }, () => one);
    expect(faults(logCommissionInput, { ...least, pictures: nine })).toEqual(['pictures']);
  });
  test('a change keeps to what a request can say', () => {
    expect(
      faults(changeRequestInput, { requestKey, commissionId, title: 'x', price: '1' }),
    ).toEqual(['']);
  });
});

describe('an agreement', () => {
  const form = {
    ...{ requestKey, commissionId, priceCents: '9,680.00', taxPlaceId: randomUUID() },
    ...{ depositAs: 'percent', depositText: '50', agreedOn: '2026-05-04', agreedBy: 'Marit Oland' },
    signedWhere: 'gallery',
  };
  test('reads the deposit as a share or as an amount', () => {
    expect(agreeInput.parse(form)).toMatchObject({
      priceCents: 968_000n,
      deposit: { as: 'percent', percent: '50' },
    });
    const amount = agreeInput.parse({ ...form, depositAs: 'amount', depositText: '5,203' });
    expect(amount.deposit).toEqual({ as: 'amount', amountCents: 520_300n });
  });
  test.each([
    ['a share above a hundred', { depositText: '101' }, ['depositText']],
    ['no price', { priceCents: '0' }, ['priceCents']],
    ['a day that the calendar does not have', { agreedOn: '2026-02-30' }, ['agreedOn']],
    ['no word of where', { signedWhere: undefined }, ['signedWhere']],
    [
      'their own page, where no such paper is signed',
      { signedWhere: 'on_their_page' },
      ['signedWhere'],
    ],
  ])('%s is told at its field', (_label, over, expected) => {
    expect(faults(agreeInput, { ...form, ...over })).toEqual(expected);
  });
});

test('a payment is of at least one cent and says how and by whom', () => {
  const form = { requestKey, commissionId, amountCents: '0', paidBy: '' };
  expect(faults(takePaymentInput, form).sort()).toEqual(['amountCents', 'kind', 'paidBy']);
});

test('a yes names the bytes it is given to', () => {
  const form = {
    ...{ requestKey, commissionId, what: 'sketch', shownId: randomUUID(), how: 'by_mail' },
    ...{ approvedBy: 'Marit Oland', approvedOn: '2026-05-08', contentSha256: 'not a hash' },
  };
  expect(faults(approveInput, form)).toEqual(['contentSha256']);
  expect(faults(approveInput, { ...form, contentSha256: 'a'.repeat(64) })).toEqual([]);
});
