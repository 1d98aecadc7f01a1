import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { findReceipt } from '@/lib/sales/reads/receipts';
import { saleRefusalMessage } from '@/lib/sales/rules/refusals';
import { db } from '@/lib/platform/db/client';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  later,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';

let gallery: OpenGallery;
let tern: TestPiece;
let fern: TestPiece;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  tern = await aPieceHere(gallery, {
    sku: 'TS-10-CI',
    title: 'Tern over Shoals',
    priceCents: 18_000n,
    here: 1,
  });
  fern = await aPieceHere(gallery, {
    sku: 'SF-08-MW',
    title: 'Sword Fern',
    priceCents: 9_650n,
    here: 20,
  });
});

const tables = [
  ...['Sale', 'SaleLine', 'SaleTax', 'Tender', 'StockMovement', 'JournalEntry', 'Posting'],
  'AuditLine',
];

async function countAll(): Promise<Record<string, number>> {
  const counts = tables.map(
    (name) => `select '${name}' as name, count(*)::int as n from "${name}"`,
  );
  const rows = await sql<{ name: string; n: number }>(counts.join(' union all '));
  return Object.fromEntries(rows.map((row) => [row.name, row.n]));
}

async function onHand(piece: TestPiece): Promise<number> {
  const rows = await sql<{ n: number }>(
    'select "onHand" as n from "StockLevel" where "skuId" = $1',
    [piece.skuId],
  );
  return rows[0]?.n ?? 0;
}

describe('a sale', () => {
  test('moves the piece, tells the money, posts the entry and can be read again', async () => {
    const sale = aSale([
      { piece: tern, quantity: 1 },
      { piece: fern, quantity: 2 },
    ]);
    const given = sale.expectedTotalCents + 156n;
    const tenders = [{ kind: 'cash' as const, givenCents: given }];
    const sold = await sellNow(doing(gallery.clerk), { ...sale, tenders });
    expect(sold).toMatchObject({ ok: true, value: { total: '40284', change: '156' } });
    if (!sold.ok) return;

    expect([await onHand(tern), await onHand(fern)]).toEqual([0, 18]);
    const receipt = await findReceipt(gallery.books, sold.value.number);
    expect(receipt).toMatchObject({
      soldBy: 'Perrin Oday',
      soldOn: '2026-11-20',
      netCents: 37_300n,
      taxCents: 2_984n,
      totalCents: 40_284n,
      changeCents: 156n,
      lines: [
        { title: 'Tern over Shoals', quantity: 1, netCents: 18_000n },
        { title: 'Sword Fern', quantity: 2, netCents: 19_300n },
      ],
      taxes: [
        { authority: 'Cedar Landing', ratePercent: '1.5', taxCents: 560n },
        { authority: 'State', ratePercent: '6.5', taxCents: 2_424n },
      ],
    });
    const postings = await sql<{ account: string; cents: string }>(
      `select "accountCode" as account, "amountCents" as cents from "Posting" order by id`,
    );
    expect(postings.map((posting) => [posting.account, posting.cents])).toEqual([
      ['1000', '40284'],
      ['4000', '-37300'],
      ['2100', '-560'],
      ['2100', '-2424'],
    ]);
    const audit = await sql('select did, subject, "subjectId" as id from "AuditLine"');
    expect(audit).toEqual([{ did: 'sold at the counter', subject: 'Sale', id: sold.value.saleId }]);
  });

  test('late in the evening belongs to the day it is there, not to the day it is in Greenwich', async () => {
    const lateInTheEvening = new Date('2026-12-01T07:59:00Z');
    const sold = await sellNow(
      doing(gallery.clerk, lateInTheEvening),
      aSale([{ piece: tern, quantity: 1 }]),
    );
    expect(sold.ok && (await findReceipt(gallery.clerk, sold.value.number))?.soldOn).toBe(
      '2026-11-30',
    );
  });
});

describe('the last one', () => {
  test('two people sell it at the same moment: one does, the other is told who and when', async () => {
    const tills = [gallery.clerk, gallery.second];
    const tries = await Promise.all(
      tills.map((actor, at) =>
        sellNow(doing(actor, later(at)), aSale([{ piece: tern, quantity: 1 }])),
      ),
    );
    expect(tries.filter((each) => each.ok)).toHaveLength(1);
    const refused = tries.find((each) => !each.ok);
    const winner = tills[tries.findIndex((each) => each.ok)];
    expect(refused).toMatchObject({
      refusal: {
        code: 'not_enough_pieces',
        title: 'Tern over Shoals',
        onHand: 0,
        wanted: 1,
        last: { by: winner?.name, channel: 'counter' },
      },
    });
    expect(await onHand(tern)).toBe(0);
    expect((await countAll())['Sale']).toBe(1);
  });

  test('is told two minutes later in plain words', async () => {
    await sellNow(doing(gallery.second), aSale([{ piece: tern, quantity: 1 }]));
    const refused = await sellNow(
      doing(gallery.clerk, later(130)),
      aSale([{ piece: tern, quantity: 1 }]),
    );
    if (refused.ok || refused.refusal.code !== 'not_enough_pieces') {
      expect.unreachable('The last one was sold already.');
    }
    expect(saleRefusalMessage(refused.refusal)).toBe(
      'The last Tern over Shoals 10 × 10 in was sold two minutes ago, at the counter, by Sunniva Rask.',
    );
  });

  test('six tills and four pieces: four are sold, two are refused, and none is lost', async () => {
    const heron = await aPieceHere(gallery, {
      sku: 'HL-12-TK',
      title: 'Heron at Low Water',
      priceCents: 24_000n,
      here: 4,
    });
    const tries = await Promise.all(
      Array.from({ length: 6 }, () =>
        sellNow(doing(gallery.clerk), aSale([{ piece: heron, quantity: 1 }])),
      ),
    );
    expect(tries.filter((each) => each.ok)).toHaveLength(4);
    expect(
      tries.filter((each) => !each.ok && each.refusal.code === 'not_enough_pieces').length,
    ).toBe(2);
    expect(await onHand(heron)).toBe(0);
  });
});

describe('a command that comes again', () => {
  test('with the same key is one sale, with the same receipt', async () => {
    const sale = aSale([{ piece: fern, quantity: 1 }]);
    const [first, second] = await Promise.all([
      sellNow(doing(gallery.clerk), sale),
      sellNow(doing(gallery.clerk), sale),
    ]);
    expect(first.ok).toBe(true);
    expect(second).toEqual(first);
    expect(await onHand(fern)).toBe(19);
    expect(await sellNow(doing(gallery.clerk, later(900)), sale)).toEqual(first);
    expect((await countAll())['Sale']).toBe(1);
  });

  test('with the same key and something else in it is refused', async () => {
    const sale = aSale([{ piece: fern, quantity: 1 }]);
    await sellNow(doing(gallery.clerk), sale);
    const other = { ...aSale([{ piece: fern, quantity: 2 }]), requestKey: sale.requestKey };
    expect(await sellNow(doing(gallery.clerk), other)).toEqual({
      ok: false,
      refusal: { code: 'key_used_for_something_else' },
    });
    expect(await onHand(fern)).toBe(19);
  });

  test('after a refusal may be sent again with the same key', async () => {
    const sale = aSale([{ piece: fern, quantity: 1 }]);
    const little = { ...sale, tenders: [{ kind: 'cash' as const, givenCents: 1n }] };
    expect(await sellNow(doing(gallery.clerk), little)).toMatchObject({
      refusal: { code: 'not_enough_cash' },
    });
    expect((await sellNow(doing(gallery.clerk), sale)).ok).toBe(true);
  });
});

describe('a sale that is refused leaves nothing behind', () => {
  const card = (amountCents: bigint) => ({ kind: 'card' as const, amountCents, reference: '' });

  test.each([
    ['not_allowed', () => sellAs('maker', aSale([{ piece: fern, quantity: 1 }]))],
    ['unknown_collector', () => sell({ collectorId: randomUUID() })],
    ['nothing_on_slip', () => sell({ lines: [] })],
    ['unknown_piece', () => sell({ lines: [{ skuId: randomUUID(), quantity: 1 }] })],
    ['not_enough_pieces', () => sell({ lines: [{ skuId: tern.skuId, quantity: 2 }] })],
    ['price_changed', () => sell({ expectedTotalCents: 1n })],
    ['tenders_do_not_add_up', () => sell({ tenders: [card(1n)] })],
    ['not_enough_cash', () => sell({ tenders: [{ kind: 'cash', givenCents: 1n }] })],
  ])('%s', async (code, trySelling) => {
    const before = await countAll();
    expect(await trySelling()).toMatchObject({ ok: false, refusal: { code } });
    expect(await countAll()).toEqual(before);
    expect(await onHand(fern)).toBe(20);
  });

  test('a price that went up meanwhile is told with both figures', async () => {
    const sale = aSale([{ piece: fern, quantity: 1 }]);
    await db().sku.update({ where: { id: fern.skuId }, data: { priceCents: 9_900n } });
    expect(await sellNow(doing(gallery.clerk), sale)).toEqual({
      ok: false,
      refusal: { code: 'price_changed', shownCents: 10_422n, nowCents: 10_692n },
    });
  });

  test('a rate that is not in force yet, or no more, is no rate', async () => {
    await db().taxRate.updateMany({ data: { untilOn: new Date('2026-11-20') } });
    expect(await sell({})).toMatchObject({
      refusal: { code: 'no_tax_rate', place: 'Cedar Landing', on: '2026-11-20' },
    });
  });

  function sell(over: Parameters<typeof aSale>[1]) {
    return sellAs('clerk', aSale([{ piece: fern, quantity: 1 }], over));
  }

  function sellAs(who: 'clerk' | 'maker', sale: ReturnType<typeof aSale>) {
    return sellNow(doing(gallery[who]), sale);
  }
});
