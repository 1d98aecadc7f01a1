import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { hangingTermsInput } from '@/lib/access/input/hanging';
import { keepHangingTerms } from '@/lib/access/writes/hanging';
import { getGallery } from '@/lib/platform/settings';
import { sql, startAfresh } from '../../helpers/database';
import { by, done, openGallery, takeOn } from './people';

beforeEach(startAfresh);

const said = (over: Record<string, string> = {}) => ({
  requestKey: randomUUID(),
  eyeHeightUm: '58 in',
  hangSafety: '4',
  fixingsLookMonths: '24',
  ...over,
});

test('the owner says how pieces are hung, and it is written down who did', async () => {
  const { owner } = await openGallery();
  done(await keepHangingTerms(by(owner), hangingTermsInput.parse(said())));
  expect(await getGallery()).toMatchObject({
    ...{ eyeHeightUm: 1_473_200, hangSafetyPercent: 400, fixingsLookMonths: 24 },
  });
  expect(await sql(`select did from "AuditLine" order by id desc limit 1`)).toEqual([
    { did: 'changed how pieces are hung' },
  ]);
});

test('nobody but the owner does, and nothing is changed', async () => {
  const { owner } = await openGallery();
  const seller = await takeOn(owner, 'tomas', ['gallery']);
  const kept = await keepHangingTerms(by(seller), hangingTermsInput.parse(said()));
  expect(kept).toMatchObject({ ok: false, refusal: { code: 'not_allowed' } });
  expect((await getGallery()).hangSafetyPercent).toBe(300);
});

test.each([
  ['a height under a table', { eyeHeightUm: '10 in' }, 'Write a height from 20 in to 98 in.'],
  ['no height', { eyeHeightUm: 'high' }, ''],
  ['fixings that carry the weight alone', { hangSafety: '1' }, 'from 2 to 4'],
  ['no number', { fixingsLookMonths: 'soon' }, 'from 1 to 600'],
])('%s is told in words', (_name, over, words) => {
  const read = hangingTermsInput.safeParse(said(over));
  expect(read.success).toBe(false);
  expect(read.error?.issues[0]?.message).toContain(words);
});

test('the database itself keeps fixings above twice the weight', async () => {
  await openGallery();
  await expect(sql(`update "Gallery" set "hangSafetyPercent" = 100`)).rejects.toThrow(
    'gallery_hangs_safely',
  );
});
