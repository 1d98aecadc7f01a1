import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { handOver } from '@/lib/commissions/writes/hand-over';
import { takePayment } from '@/lib/commissions/writes/money';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { aPayment, agreed, asked, done, on } from './a-commission';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

type Line = { on: string; account: string; cents: string };

async function journal(): Promise<Line[]> {
  return sql<Line>(`
    SELECT to_char(entry."on", 'YYYY-MM-DD') AS on, posting."accountCode" AS account,
      posting."amountCents"::text AS cents
    FROM "Posting" posting JOIN "JournalEntry" entry ON entry.id = posting."entryId"
    ORDER BY entry.number, posting."amountCents" DESC`);
}

test('a deposit of 5,500 is owed to the collector until the piece is handed over', async () => {
  // OpenStax, Principles of Accounting, volume 1, section 12.2: 5,500 received on 25 March is
  // unearned; it is earned on 10 June. The book's example has no tax, so the site's rate is 0.
  const untaxed = await db().taxPlace.create({
    data: {
      name: 'Outer Skerry',
      state: 'OR',
      rates: {
        create: [{ authority: 'State', ratePercent: '0', fromOn: new Date('2026-01-01') }],
      },
    },
  });
  const { commissionId } = await asked(gallery.maker, '2026-03-20');
  await agreed(
    { ...gallery, taxPlaceId: untaxed.id },
    { commissionId, day: '2026-03-24', priceCents: 550_000n, depositCents: 550_000n },
  );
  const paid = aPayment(commissionId, 550_000n, 'cash');
  done(await takePayment(on(gallery.clerk, '2026-03-25'), paid));
  expect(await journal()).toEqual([
    { on: '2026-03-25', account: '1000', cents: '550000' },
    { on: '2026-03-25', account: '2000', cents: '-550000' },
  ]);

  const signed = {
    requestKey: randomUUID(),
    commissionId,
    signedBy: 'Marit Oland',
    handedOn: '2026-06-10' as const,
  };
  done(await handOver(on(gallery.owner, '2026-06-10'), signed));
  expect((await journal()).slice(2)).toEqual([
    { on: '2026-06-10', account: '2000', cents: '550000' },
    { on: '2026-06-10', account: '4010', cents: '-550000' },
  ]);
});

test('the rest is owed after the hand-over, with the tax of that day, until it is paid', async () => {
  const { commissionId } = await asked(gallery.maker, '2026-07-01');
  const day = '2026-07-02';
  await agreed(gallery, { commissionId, day, priceCents: 1_000_000n, depositCents: 500_000n });
  done(await takePayment(on(gallery.clerk, '2026-07-03'), aPayment(commissionId, 500_000n)));
  const handedOn = '2026-09-01';
  const evenIfOwed = 'They pay when it hangs.';
  const names = { requestKey: randomUUID(), commissionId, signedBy: 'Marit Oland' };
  const signed = { ...names, handedOn, evenIfOwed };
  done(await handOver(on(gallery.owner, handedOn), { ...signed, handedOn: '2026-09-01' }));
  const cheque = aPayment(commissionId, 580_000n, 'cheque');
  done(await takePayment(on(gallery.clerk, '2026-09-05'), cheque));

  const lines = (await journal()).filter((line) => line.on >= '2026-07-01');
  expect(lines).toEqual([
    { on: '2026-07-03', account: '1010', cents: '500000' },
    { on: '2026-07-03', account: '2000', cents: '-500000' },
    { on: '2026-09-01', account: '1100', cents: '580000' },
    { on: '2026-09-01', account: '2000', cents: '500000' },
    { on: '2026-09-01', account: '2100', cents: '-15000' },
    { on: '2026-09-01', account: '2100', cents: '-65000' },
    { on: '2026-09-01', account: '4010', cents: '-1000000' },
    { on: '2026-09-05', account: '1020', cents: '580000' },
    { on: '2026-09-05', account: '1100', cents: '-580000' },
  ]);
  const left = await sql(`SELECT sum("amountCents")::text AS cents FROM "Posting"
    WHERE "accountCode" IN ('1100', '2000')`);
  expect(left).toEqual([{ cents: '0' }]);
});
