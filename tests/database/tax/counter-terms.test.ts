import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { counterTermsInput } from '@/lib/access/input/counter-terms';
import { keepCounterTerms } from '@/lib/access/writes/counter-terms';
import { getGallery } from '@/lib/platform/settings';
import { doing, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const terms = (over: Record<string, unknown> = {}) =>
  counterTermsInput.parse({
    ...{ requestKey: randomUUID(), staffDiscountPercent: '12.5', returnDays: '0' },
    ...{ restockingFeePercent: '15', returnTerms: 'Whole, with its receipt.', holdHours: '72' },
    ...{ layawayDownPercent: '33.33', layawayDays: '60', layawayTerms: 'Kept till it is paid.' },
    ...{ approvalDays: '5', drawerFloatCents: '0', ...over },
  });

test('the owner keeps them, and what changed is written down', async () => {
  expect((await keepCounterTerms(doing(gallery.owner), terms())).ok).toBe(true);
  expect(await getGallery()).toMatchObject({
    ...{ staffDiscountPercent: '12.5', returnDays: 0, restockingFeePercent: '15', holdHours: 72 },
    ...{ layawayDownPercent: '33.33', layawayDays: 60, approvalDays: 5, drawerFloatCents: 0n },
    returnTerms: 'Whole, with its receipt.',
  });
  const [line] = await sql(`select did, facts->>'drawerFloatCents' as float from "AuditLine"`);
  expect(line).toEqual({ did: 'changed what holds at the counter', float: '0' });
});

test('nobody else does', async () => {
  const kept = await keepCounterTerms(doing(gallery.clerk), terms({ staffDiscountPercent: '90' }));
  expect(kept).toMatchObject({ refusal: { code: 'not_allowed', permission: 'settings.keep' } });
  expect((await getGallery()).staffDiscountPercent).not.toBe('90');
});

test('the same form with something else in it is refused', async () => {
  const first = terms();
  await keepCounterTerms(doing(gallery.owner), first);
  const again = { ...first, holdHours: 1 };
  expect(await keepCounterTerms(doing(gallery.owner), again)).toMatchObject({
    refusal: { code: 'key_used_for_something_else' },
  });
});

test.each([
  ['"staffDiscountPercent" = 101', 'gallery_shares_are_shares'],
  ['"holdHours" = 0', 'gallery_spans_are_positive'],
  ['"drawerFloatCents" = -1', 'gallery_spans_are_positive'],
])('the database itself refuses %s', async (change, name) => {
  await expect(sql(`update "Gallery" set ${change}`)).rejects.toThrow(name);
});
