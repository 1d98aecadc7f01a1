import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { beforeEach, describe, expect, test } from 'vitest';
import { certificateInput, tradeTermsInput } from '@/lib/collectors/input/trade';
import { readCertificateFor, readTradeTerms } from '@/lib/collectors/reads/trade';
import { getTradePage } from '@/lib/collectors/reads/trade-page';
import { keepCertificate, setTradeTerms, withdrawCertificate } from '@/lib/collectors/writes/trade';
import { db } from '@/lib/platform/db/client';
import { doing, openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';

let gallery: OpenGallery;
let designer: string;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const data = { kind: 'designer' as const, name: 'Halloran & Vane', createdAt: new Date(0) };
  designer = (await db().collector.create({ data })).id;
});

const aPaper = (over: Record<string, unknown> = {}) =>
  certificateInput.parse({
    ...{ requestKey: randomUUID(), collectorId: designer, state: 'WA', permitNumber: '4471' },
    ...{ legalName: 'Halloran & Vane', fromOn: '2026-01-01', untilOn: '2026-12-31', ...over },
  });
const terms = (over: Record<string, unknown> = {}) =>
  tradeTermsInput.parse({
    ...{ requestKey: randomUUID(), collectorId: designer, way: 'discount', percent: '15' },
    ...{ sinceOn: '2026-01-01', ...over },
  });
const standing = async (state = 'WA') =>
  (await readCertificateFor(db(), { collectorId: designer, state, on: '2026-11-20' })).kind;
const clerk = () => doing(gallery.clerk);

describe('a certificate', () => {
  test('is put on file at the counter, and good for its state', async () => {
    expect(await standing()).toBe('none');
    expect((await keepCertificate(clerk(), aPaper())).ok).toBe(true);
    expect([await standing(), await standing('OR')]).toEqual(['good', 'other_state']);
    expect(await sql(`select did, facts->>'permitNumber' as number from "AuditLine"`)).toEqual([
      { did: 'put a resale certificate on file', number: '4471' },
    ]);
  });

  test('comes with its picture, which is kept once', async () => {
    const bytes = await sharp({
      create: { width: 40, height: 30, channels: 3, background: '#cfd8cf' },
    })
      .jpeg()
      .toBuffer();
    const picture = new File([new Uint8Array(bytes)], 'paper.jpg');
    await keepCertificate(clerk(), aPaper({ picture }));
    await keepCertificate(clerk(), aPaper({ picture, state: 'OR' }));
    const page = await getTradePage(gallery.books, designer);
    const hrefs = page?.certificates.map(({ pictureHref }) => pictureHref) ?? [];
    expect(hrefs).toHaveLength(2);
    expect(new Set(hrefs).size).toBe(1);
    expect(hrefs[0]).toMatch(/^\/files\/[0-9a-f-]{36}$/);
  });

  test('a picture that is none is refused, and nothing is kept', async () => {
    const picture = new File([readFileSync(new URL(import.meta.url))], 'paper.jpg');
    expect(await keepCertificate(clerk(), aPaper({ picture }))).toEqual({
      ok: false,
      refusal: { code: 'picture_not_kept', picture: { code: 'not_a_picture' } },
    });
    expect(await sql('select 1 from "ResaleCertificate"')).toEqual([]);
  });

  test('sent twice is on file once', async () => {
    const paper = aPaper();
    const both = await Promise.all([
      keepCertificate(clerk(), paper),
      keepCertificate(clerk(), paper),
    ]);
    expect(both[0]).toEqual(both[1]);
    expect(await sql('select 1 from "ResaleCertificate"')).toHaveLength(1);
  });

  test('of the same permit at the same moment one is put on file', async () => {
    const two = await Promise.all([
      keepCertificate(clerk(), aPaper()),
      keepCertificate(doing(gallery.second), aPaper()),
    ]);
    expect(two.filter((one) => one.ok)).toHaveLength(1);
    expect(two.find((one) => !one.ok)).toMatchObject({ refusal: { code: 'certificate_is_there' } });
  });

  test('is refused to the maker first, then for somebody nobody knows', async () => {
    const unknown = aPaper({ collectorId: randomUUID() });
    expect(await keepCertificate(doing(gallery.maker), unknown)).toMatchObject({
      refusal: { code: 'not_allowed' },
    });
    expect(await keepCertificate(clerk(), unknown)).toMatchObject({
      refusal: { code: 'unknown_collector' },
    });
  });

  test('is withdrawn once, and exempts nothing from then on', async () => {
    const kept = await keepCertificate(clerk(), aPaper());
    const certificateId = kept.ok ? kept.value : '';
    const withdrawal = () => ({ requestKey: randomUUID(), certificateId });
    expect((await withdrawCertificate(clerk(), withdrawal())).ok).toBe(true);
    expect(await standing()).toBe('withdrawn');
    expect(await withdrawCertificate(clerk(), withdrawal())).toMatchObject({
      refusal: { code: 'certificate_unknown' },
    });
    expect((await keepCertificate(clerk(), aPaper())).ok).toBe(true);
  });

  test('the database itself takes none that ends before it begins', async () => {
    const write = sql(
      `insert into "ResaleCertificate" (id, "collectorId", state, "permitNumber", "legalName",
         "fromOn", "untilOn", "staffId", at)
       values ($1, $2, 'WA', '1', 'x', '2026-02-01', '2026-01-31', $1, now())`,
      [randomUUID(), designer],
    );
    await expect(write).rejects.toThrow('certificate_ends_after_it_begins');
  });
});

describe('what a designer gets', () => {
  const kept = () => readTradeTerms(db(), designer);
  test('is one way at a time, set by the owner', async () => {
    await setTradeTerms(doing(gallery.owner), terms());
    expect(await kept()).toMatchObject({ way: 'discount', percent: '15', sinceOn: '2026-01-01' });
    await setTradeTerms(doing(gallery.owner), terms({ way: 'referral_fee', percent: '12.5' }));
    expect(await kept()).toMatchObject({ way: 'referral_fee', percent: '12.5' });
    expect(await sql('select 1 from "TradeTerms"')).toHaveLength(1);
  });

  test('can end, and who ended it is written down', async () => {
    await setTradeTerms(doing(gallery.owner), terms());
    await setTradeTerms(doing(gallery.owner), terms({ way: 'nothing', percent: '' }));
    expect(await kept()).toBeNull();
    const lines = await sql(`select facts->>'before' as before from "AuditLine" order by id`);
    expect(lines).toEqual([{ before: null }, { before: 'discount 15' }]);
  });

  test.each(['clerk', 'maker', 'books'] as const)('is not set by the %s', async (who) => {
    expect(await setTradeTerms(doing(gallery[who]), terms())).toMatchObject({
      refusal: { code: 'not_allowed', permission: 'trade.keep' },
    });
    expect(await kept()).toBeNull();
  });

  test('is refused for somebody nobody knows', async () => {
    const asked = terms({ collectorId: randomUUID() });
    expect(await setTradeTerms(doing(gallery.owner), asked)).toMatchObject({
      refusal: { code: 'unknown_collector' },
    });
  });

  test.each(['0', '100', '-3'])('the database itself takes no share of %s', async (percent) => {
    const write = sql(
      `insert into "TradeTerms" ("collectorId", way, percent, "sinceOn")
       values ('${designer}', 'discount', ${percent}, '2026-01-01')`,
    );
    await expect(write).rejects.toThrow('trade_share_is_a_share');
  });
});
