import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { endCommission } from '@/lib/commissions/writes/end';
import { addHandOver, handOver } from '@/lib/commissions/writes/hand-over';
import { agree } from '@/lib/commissions/writes/agreement';
import { askForMoney } from '@/lib/commissions/writes/money/ask';
import { letMakingBegin, openCommissionJob } from '@/lib/commissions/writes/making';
import { takePayment } from '@/lib/commissions/writes/money';
import { logCommission } from '@/lib/commissions/writes/request';
import { approve } from '@/lib/commissions/writes/colours/approve';
import { showSketch } from '@/lib/commissions/writes/colours/show';
import type { Day } from '@/lib/dates/rules';
import { inTransaction } from '@/lib/platform/db/transaction';
import { refuse } from '@/lib/platform/result';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPayment,
  aPicture,
  aRequest,
  aYes,
  agreed,
  asked,
  done,
  on,
  readyForClay,
  sketched,
} from './a-commission';

let gallery: OpenGallery;
const day: Day = '2026-05-12';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

function code(result: { ok: true } | { ok: false; refusal: { code: string } }): string {
  return result.ok ? 'done' : result.refusal.code;
}

async function counts(): Promise<Record<string, string>> {
  const tables = [
    ...['Commission', 'Collector', 'CommissionPicture', 'StoredFile', 'Agreement', 'Sketch'],
    ...['Approval', 'Instalment', 'CommissionPayment', 'HandOver', 'Sale', 'JournalEntry'],
    ...['Posting', 'AuditLine', 'CommandKey', 'CommissionEnding', 'StartOverride'],
  ];
  const each = tables.map((table) => `(SELECT count(*) FROM "${table}") AS "${table}"`);
  const [row] = await sql<Record<string, string>>(`SELECT ${each.join(', ')}`);
  return row ?? {};
}

const signed = (commissionId: string, handedOn: Day = day) => ({
  ...{ requestKey: randomUUID(), commissionId, signedBy: 'Marit Oland', handedOn },
  evenIfOwed: 'They pay when it hangs.',
});
const deposit = (commissionId: string, amountCents: bigint, dueOn: Day = day) => ({
  ...{ requestKey: randomUUID(), commissionId, name: 'Deposit', amountCents, dueOn },
});
const agreement = (commissionId: string) => ({
  ...{ requestKey: randomUUID(), commissionId, priceCents: 1_000_000n },
  deposit: { as: 'percent', percent: '50' } as const,
  ...{ taxPlaceId: gallery.taxPlaceId, promisedOn: null, agreedOn: day, agreedBy: 'Marit Oland' },
});

describe('a request', () => {
  test('keeps the collector, the pictures and a line of history, in one go', async () => {
    const pictures = [await aPicture(1), await aPicture(2)];
    const { commissionId } = done(
      await logCommission(on(gallery.maker, day), { ...aRequest(), pictures }),
    );
    const rows = await sql(`
      SELECT collector.name, (SELECT count(*)::int FROM "CommissionPicture" p
        WHERE p."commissionId" = c.id) AS pictures, line.did
      FROM "Commission" c JOIN "Collector" collector ON collector.id = c."collectorId"
      JOIN "AuditLine" line ON line."subjectId" = c.id::text WHERE c.id = '${commissionId}'`);
    expect(rows).toEqual([{ name: 'Marit Oland', pictures: 2, did: 'wrote down the request' }]);
  });
  test('sent twice with one key is one request; the key does not open another', async () => {
    const request = aRequest({ title: 'Kelp for a bath' });
    const first = done(await logCommission(on(gallery.maker, day), request));
    const before = await counts();
    expect(done(await logCommission(on(gallery.maker, day), request))).toEqual(first);
    const other = { ...request, title: 'Something else' };
    expect(code(await logCommission(on(gallery.maker, day), other))).toBe(
      'key_used_for_something_else',
    );
    expect(await counts()).toEqual(before);
  });
  test('leaves nothing behind when it is refused', async () => {
    const before = await counts();
    const request = aRequest({ newName: '', collectorId: randomUUID() });
    expect(code(await logCommission(on(gallery.maker, day), request))).toBe('unknown_collector');
    const text = { ...aRequest(), pictures: [new Blob(['not a picture'])] };
    expect(code(await logCommission(on(gallery.maker, day), text))).toBe('picture_not_kept');
    expect(code(await logCommission(on(gallery.books, day), aRequest()))).toBe('not_allowed');
    expect(await counts()).toEqual(before);
  });
});

describe('refusals come in their order', () => {
  test('agreeing', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const form = agreement(commissionId);
    expect(code(await agree(on(gallery.clerk, day), form))).toBe('not_allowed');
    const unknown = { ...form, commissionId: randomUUID() };
    expect(code(await agree(on(gallery.owner, day), unknown))).toBe('unknown_commission');
    const tomorrow = { ...form, agreedOn: '2026-05-13' as const, taxPlaceId: randomUUID() };
    expect(code(await agree(on(gallery.owner, day), tomorrow))).toBe('day_to_come');
    const nowhere = { ...form, taxPlaceId: randomUUID() };
    expect(code(await agree(on(gallery.owner, day), nowhere))).toBe('unknown_tax_place');
    const all = { as: 'amount', amountCents: 1_080_001n } as const;
    expect(code(await agree(on(gallery.owner, day), { ...form, deposit: all }))).toBe(
      'deposit_above_total',
    );
    expect(done(await agree(on(gallery.owner, day), form))).toMatchObject({
      version: 1,
      depositCents: '540000',
    });
  });
  test('asking and paying', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const clerk = on(gallery.clerk, day);
    expect(code(await askForMoney(clerk, deposit(commissionId, 1n)))).toBe('not_agreed_yet');
    expect(code(await takePayment(clerk, aPayment(commissionId, 1n)))).toBe('not_agreed_yet');
    await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 0n });
    const early = deposit(commissionId, 9_999_999n, '2026-05-11');
    expect(code(await askForMoney(clerk, early))).toBe('due_before_asked');
    expect(await askForMoney(clerk, deposit(commissionId, 1_080_001n))).toEqual({
      ok: false,
      refusal: { code: 'more_than_to_ask', leftCents: 1_080_000n },
    });
    const card = { ...aPayment(commissionId, 9_999_999n), reference: '4111 1111 1111 1111' };
    expect(code(await takePayment(clerk, card))).toBe('card_number_in_reference');
    const other = { ...aPayment(commissionId, 9_999_999n), instalmentId: randomUUID() };
    expect(code(await takePayment(clerk, other))).toBe('unknown_instalment');
    expect(await takePayment(clerk, aPayment(commissionId, 1_080_001n))).toEqual({
      ok: false,
      refusal: { code: 'more_than_owed', owedCents: 1_080_000n },
    });
    expect(code(await takePayment(on(gallery.maker, day), aPayment(commissionId, 1n)))).toBe(
      'not_allowed',
    );
  });
  test('saying yes', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const sketch = await sketched(gallery.maker, commissionId, day);
    const maker = on(gallery.maker, '2026-05-14');
    const yes = aYes(commissionId, 'sketch', sketch, '2026-05-14');
    const other = { ...yes, shownId: randomUUID(), fileSha256: 'a'.repeat(64) };
    expect(code(await approve(maker, other))).toBe('nothing_shown');
    const bytes = { ...yes, contentSha256: 'a'.repeat(64), approvedOn: '2026-05-15' as const };
    expect(code(await approve(maker, bytes))).toBe('other_picture');
    const tomorrow = { ...yes, approvedOn: '2026-05-15' as const };
    expect(code(await approve(maker, tomorrow))).toBe('day_to_come');
    const before = { ...yes, approvedOn: '2026-05-11' as const };
    expect(code(await approve(maker, before))).toBe('before_it_was_shown');
    done(await approve(maker, yes));
    expect(code(await approve(maker, { ...tomorrow, requestKey: randomUUID() }))).toBe(
      'approved_already',
    );
  });
  test('beginning, handing over and ending', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const owner = on(gallery.owner, day);
    const word = { requestKey: randomUUID(), commissionId, why: 'The shop opens in June.' };
    const job = { ...word, technique: 'slip_cast' as const, pieces: 4, neededOn: null };
    expect(code(await openCommissionJob(owner, job))).toBe('not_agreed_yet');
    expect(code(await letMakingBegin(on(gallery.clerk, day), word))).toBe('not_allowed');
    done(await letMakingBegin(owner, word));
    expect(code(await letMakingBegin(owner, { ...word, requestKey: randomUUID() }))).toBe(
      'let_begin_already',
    );
    const late = signed(commissionId, '2026-05-13');
    expect(code(await handOver(owner, late))).toBe('day_to_come');
    expect(code(await handOver(owner, signed(commissionId)))).toBe('not_agreed_yet');
    const end = { ...word, requestKey: randomUUID(), endedOn: day };
    expect(done(await endCommission(owner, end))).toMatchObject({ backCents: '0' });
    expect(code(await endCommission(owner, { ...end, requestKey: randomUUID() }))).toBe(
      'ended_early',
    );
    expect(code(await handOver(owner, signed(commissionId)))).toBe('ended_early');
  });
  test('handing over what is paid and made, and only that', async () => {
    const { commissionId } = await readyForClay(gallery, day);
    const owner = on(gallery.owner, day);
    const early = signed(commissionId, '2026-05-11');
    expect(code(await handOver(owner, early))).toBe('older_than_last_payment');
    expect(code(await handOver(owner, signed(commissionId)))).toBe('job_not_finished');
    const word = { requestKey: randomUUID(), commissionId, why: 'All is there already.' };
    expect(code(await letMakingBegin(owner, word))).toBe('may_begin_already');
  });
});

describe('two at once', () => {
  test('the same yes is written down once', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const sketch = await sketched(gallery.maker, commissionId, day);
    const both = await Promise.all([
      approve(on(gallery.maker, day), aYes(commissionId, 'sketch', sketch, day)),
      approve(on(gallery.clerk, day), aYes(commissionId, 'sketch', sketch, day)),
    ]);
    expect(both.map(code).sort()).toEqual(['approved_already', 'done']);
  });
  test('the last of what is owed is taken once', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 0n });
    const both = await Promise.all([
      takePayment(on(gallery.clerk, day), aPayment(commissionId, 1_080_000n)),
      takePayment(on(gallery.second, day), aPayment(commissionId, 1_080_000n, 'cash')),
    ]);
    expect(both.map(code).sort()).toEqual(['done', 'more_than_owed']);
    const [row] = await sql(`SELECT sum("amountCents")::text AS cents FROM "CommissionPayment"
      WHERE "commissionId" = '${commissionId}'`);
    expect(row).toEqual({ cents: '1080000' });
  });
  test('it is handed over once', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 0n });
    const both = await Promise.all([
      handOver(on(gallery.owner, day), signed(commissionId)),
      handOver(on(gallery.owner, day), signed(commissionId)),
    ]);
    expect(both.map(code).sort()).toEqual(['done', 'handed_over_already']);
  });
  test('two sketches get two letters', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const show = async (shade: number) =>
      showSketch(on(gallery.maker, day), {
        ...{ requestKey: randomUUID(), commissionId, note: '', shownOn: day },
        picture: await aPicture(shade),
      });
    const both = await Promise.all([show(70), show(80)]);
    expect(both.map((each) => done(each).label).sort()).toEqual(['A', 'B']);
  });
});

test('a payment sent twice with one key is one payment', async () => {
  const { commissionId } = await asked(gallery.maker, day);
  await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 0n });
  const payment = aPayment(commissionId, 100_000n);
  const both = await Promise.all([
    takePayment(on(gallery.clerk, day), payment),
    takePayment(on(gallery.clerk, day), payment),
  ]);
  const [first, second] = both.map((each) => done(each));
  expect(first).toEqual(second);
  const rows = await sql(
    `SELECT 1 FROM "CommissionPayment" WHERE "commissionId" = '${commissionId}'`,
  );
  expect(rows).toHaveLength(1);
});

test('a hand-over that is refused after all leaves no sale and no entry behind', async () => {
  const { commissionId } = await asked(gallery.maker, day);
  await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 0n });
  const before = await counts();
  const result = await inTransaction(async (tx) => {
    const handed = await addHandOver(tx, on(gallery.owner, day), signed(commissionId));
    expect(handed.ok).toBe(true);
    return refuse({ code: 'thought_better_of_it' });
  });
  expect(result.ok).toBe(false);
  expect(await counts()).toEqual(before);
});

test('what goes back after an early end stays a debt until it does', async () => {
  const { commissionId } = await readyForClay(gallery, day);
  const end = { requestKey: randomUUID(), commissionId, why: 'The house was sold.', endedOn: day };
  expect(done(await endCommission(on(gallery.owner, day), end)).backCents).toBe('500000');
  const [held] = await sql(`SELECT sum("amountCents")::text AS cents FROM "Posting"
    WHERE "accountCode" = '2000' AND "commissionId" = '${commissionId}'`);
  expect(held).toEqual({ cents: '-500000' });
  const clerk = on(gallery.clerk, day);
  expect(code(await takePayment(clerk, aPayment(commissionId, 1n)))).toBe('ended_early');
});
