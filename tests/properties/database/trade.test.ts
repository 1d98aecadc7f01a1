import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { depositEntry, settlementEntry } from '@/lib/ledger/rules';
import { postEntry } from '@/lib/ledger/writes';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { db } from '@/lib/platform/db/client';
import { ok } from '@/lib/platform/result';
import { decideCommissionSale } from '@/lib/sales/rules';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  aSale,
  bringHere,
  doing,
  later,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestSale,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { aCommissionSale } from '@/tests/rules/sales/a-commission-sale';

/** One thing that happens in the gallery, in figures that chance chooses. */
type Step =
  | { does: 'sell'; lines: readonly { at: number; quantity: number }[]; given: bigint }
  | { does: 'sell twice'; at: number }
  | { does: 'two tills'; at: number; quantity: number }
  | { does: 'bring'; at: number; quantity: number }
  | { does: 'reprice'; at: number; priceCents: bigint }
  | { does: 'pay ahead'; amountCents: bigint }
  | { does: 'hand over'; priceCents: bigint; paidCents: bigint };

const at = fc.nat({ max: 2 });
const quantity = fc.integer({ min: 1, max: 4 });
const cents = fc.bigInt({ min: 1n, max: 900_000n });
const steps = fc.array(
  fc.oneof<fc.Arbitrary<Step>[]>(
    fc.record({
      does: fc.constant('sell' as const),
      lines: fc.array(fc.record({ at, quantity }), { minLength: 1, maxLength: 3 }),
      given: fc.bigInt({ min: -5_000n, max: 20_000n }),
    }),
    fc.record({ does: fc.constant('sell twice' as const), at }),
    fc.record({ does: fc.constant('two tills' as const), at, quantity }),
    fc.record({ does: fc.constant('bring' as const), at, quantity }),
    fc.record({ does: fc.constant('reprice' as const), at, priceCents: cents }),
    fc.record({ does: fc.constant('pay ahead' as const), amountCents: cents }),
    fc.record({ does: fc.constant('hand over' as const), priceCents: cents, paidCents: cents }),
  ),
  { minLength: 4, maxLength: 12 },
);

test('whatever happens in whatever order, stock, sales and books agree', async () => {
  const seed = Number(process.env['TRADE_SEED'] ?? String(Math.floor(Math.random() * 2 ** 31)));
  console.log(`trade seed ${seed}`);
  await fc.assert(
    fc.asyncProperty(steps, async (happens) => {
      await startAfresh();
      const gallery = await openGallery();
      const pieces = await threePieces(gallery);
      const commissionId = await aCommission(gallery);
      for (const [second, step] of happens.entries()) {
        await take(step, { gallery, pieces, commissionId, second });
      }
      expect(await brokenRules()).toEqual([]);
    }),
    { seed, numRuns: 8, endOnFailure: true },
  );
}, 120_000);

async function threePieces(gallery: OpenGallery): Promise<TestPiece[]> {
  const names = ['Tern over Shoals', 'Sword Fern', 'River Stones'];
  const made: TestPiece[] = [];
  for (const [here, title] of names.entries()) {
    const piece = { sku: `AB-${here + 10}`, title, priceCents: 3_333n * BigInt(here + 1), here };
    made.push(await aPieceHere(gallery, piece));
  }
  return made;
}

async function aCommission(gallery: OpenGallery): Promise<string> {
  const when = { createdAt: later(0) };
  const collector = await db().collector.create({ data: { name: 'Odile Sefton', ...when } });
  const asked = { askedAt: later(0), askedOn: later(0), takenById: gallery.owner.id };
  const data = { collectorId: collector.id, title: 'Tidewater wall', ...asked };
  return (await db().commission.create({ data })).id;
}

type World = {
  gallery: OpenGallery;
  pieces: TestPiece[];
  commissionId: string;
  second: number;
};

async function take(step: Step, world: World): Promise<unknown> {
  const { gallery, second } = world;
  const doer = doing(gallery.clerk, later(second));
  switch (step.does) {
    case 'sell':
      return sellNow(doer, saleOf(step, world));
    case 'sell twice': {
      const sale = aSale([{ piece: pieceAt(world, step.at), quantity: 1 }]);
      const [first, again] = [await sellNow(doer, sale), await sellNow(doer, sale)];
      return expect(again).toEqual(first);
    }
    case 'two tills': {
      const tills = [gallery.clerk, gallery.second];
      const lines = [{ piece: pieceAt(world, step.at), quantity: step.quantity }];
      return Promise.all(tills.map((actor) => sellNow(doing(actor, later(second)), aSale(lines))));
    }
    case 'bring':
      return bringHere(gallery, pieceAt(world, step.at).skuId, step.quantity);
    case 'reprice': {
      const { skuId } = pieceAt(world, step.at);
      const { priceCents } = step;
      return db().sku.update({ where: { id: skuId }, data: { priceCents } });
    }
    case 'pay ahead':
      return payAhead(step.amountCents, world);
    case 'hand over':
      return handOver(step, world);
  }
}

/** Prices that moved meanwhile and too little cash are part of the play: such sales are refused. */
function saleOf(step: Extract<Step, { does: 'sell' }>, world: World): TestSale {
  const lines = step.lines.map((line) => ({ ...line, piece: pieceAt(world, line.at) }));
  const sale = aSale(lines);
  const givenCents = sale.expectedTotalCents + step.given;
  return { ...sale, tenders: [{ kind: 'cash', givenCents: givenCents > 0n ? givenCents : 0n }] };
}

function pieceAt(world: World, place: number): TestPiece {
  const piece = world.pieces[place];
  if (!piece) throw new Error('There are three pieces.');
  return piece;
}

/** What a hand-over uses up was taken before it. */
async function payBefore(tx: Tx, amountCents: bigint, world: World): Promise<void> {
  if (amountCents <= 0n) return;
  const payment = { kind: 'bank_transfer', amountCents, commissionId: world.commissionId } as const;
  await postEntry(tx, {
    ...{ memo: 'Paid', paper: 'CommissionPayment', paperId: randomUUID() },
    ...{ on: '2026-11-20', at: later(world.second), staffId: world.gallery.owner.id },
    postings: depositEntry(payment),
  });
}

async function payAhead(amountCents: bigint, world: World): Promise<unknown> {
  const payment = { kind: 'card', amountCents, commissionId: world.commissionId } as const;
  const isLate = amountCents % 2n === 0n;
  return inTransaction(async (tx) => {
    const postings = isLate ? settlementEntry(payment) : depositEntry(payment);
    const paper = { memo: 'Paid', paper: 'CommissionPayment', paperId: randomUUID() };
    const when = { on: '2026-11-20', at: later(world.second) } as const;
    await postEntry(tx, { ...paper, ...when, staffId: world.gallery.owner.id, postings });
    return ok(null);
  });
}

async function handOver(
  step: { priceCents: bigint; paidCents: bigint },
  world: World,
): Promise<unknown> {
  const { gallery, commissionId } = world;
  const parts = [{ name: 'State', ratePercent: '6.875' }];
  const decided = decideCommissionSale(aCommissionSale(step), parts, 'item');
  const where = { placeId: gallery.counterId, taxPlaceId: gallery.taxPlaceId, collectorId: null };
  const sale = { ...decided, ...where, channel: 'commission', commissionId } as const;
  const doer = doing(gallery.owner, later(world.second));
  return inTransaction(async (tx) => {
    await payBefore(tx, step.paidCents, world);
    return ok(await recordSales(tx, doer, [{ ...sale, soldOn: '2026-11-20' }]));
  });
}

/** The rules that hold always, asked in plain SQL; each answers with what breaks it. */
const rules: Record<string, string> = {
  'on hand is the sum of its movements, and never below zero': `
    select l."skuId" from "StockLevel" l where l."onHand" < 0 or l."onHand" <>
      (select coalesce(sum(m.quantity), 0) from "StockMovement" m
       where m."skuId" = l."skuId" and m."placeId" = l."placeId")`,
  'every movement has its level': `
    select m."skuId" from "StockMovement" m where not exists (select 1 from "StockLevel" l
      where l."skuId" = m."skuId" and l."placeId" = m."placeId")`,
  'every entry sums to zero': `
    select e.number from "JournalEntry" e left join "Posting" p on p."entryId" = e.id
    group by e.id having count(p.id) < 2 or sum(p."amountCents") <> 0`,
  'all of the books sum to zero': `
    select sum("amountCents") from "Posting" having sum("amountCents") <> 0`,
  'lines, taxes and tenders make up the sale': `
    select s.number from "Sale" s where s."totalCents" <>
      (select sum("netCents" + "taxCents") from "SaleLine" where "saleId" = s.id)
      or s."totalCents" <> (select sum("amountCents") from "Tender" where "saleId" = s.id)
      or s."taxCents" <> (select sum("taxCents") from "SaleTax" where "saleId" = s.id)`,
  'what the books earned and hold is what was sold and taxed': `
    select 1 where coalesce((select sum("netCents" + "taxCents") from "SaleLine"), 0) <>
      -coalesce((select sum("amountCents") from "Posting"
        where "accountCode" in ('4000', '4010', '2100')), 0)`,
  'cash in the drawer is what was taken in cash': `
    select 1 where coalesce((select sum("amountCents") from "Tender" where kind = 'cash'), 0) <>
      coalesce((select sum("amountCents") from "Posting" where "accountCode" = '1000'), 0)`,
  'as many pieces left as were sold': `
    select 1 where coalesce((select sum(quantity) from "SaleLine" where kind = 'piece'), 0) <>
      -coalesce((select sum(quantity) from "StockMovement" where reason = 'sold'), 0)`,
  'a sale at the counter has one audit line and one key': `
    select s.number from "Sale" s where s.channel = 'counter' and (
      (select count(*) from "AuditLine" a where a."subjectId" = s.id::text) <> 1
      or (select count(*) from "CommandKey" k where k.answer ->> 'saleId' = s.id::text) <> 1)`,
};

async function brokenRules(): Promise<string[]> {
  const broken: string[] = [];
  for (const [rule, statement] of Object.entries(rules)) {
    if ((await sql(statement)).length > 0) broken.push(rule);
  }
  return broken;
}
