import { randomUUID } from 'node:crypto';
import { fc, test } from '@fast-check/vitest';
import { beforeAll, expect } from 'vitest';
import { endHold, holdPieces } from '@/lib/holds/writes';
import { constraintOf } from '@/lib/platform/db/errors';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { bringIntoStock, moveStock } from '@/lib/stock/writes';
import {
  aPieceHere,
  aSale,
  doing,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from '../../database/sales/open-gallery';
import { sql } from '../../helpers/database';

let gallery: OpenGallery;
let count = 0;

beforeAll(async () => {
  gallery = await openGallery();
});

const wish = fc.record({
  what: fc.constantFrom('hold', 'hold', 'end', 'end', 'sell', 'move', 'made', 'knock'),
  pieces: fc.integer({ min: 1, max: 4 }),
  which: fc.nat(9),
});
type Wish = { what: string; pieces: number; which: number };
type Play = { piece: TestPiece; holds: string[] };

/** What was asked and done by one of several people; how it ended counts for nothing here. */
async function fulfil({ piece, holds }: Play, { what, pieces, which }: Wish): Promise<void> {
  const doer = doing(which % 2 === 0 ? gallery.clerk : gallery.second);
  const { skuId } = piece;
  const { counterId: placeId, backRoomId } = gallery;
  const holdId = holds[which % Math.max(holds.length, 1)] ?? randomUUID();
  if (what === 'hold') {
    const held = await inTransaction((tx) =>
      holdPieces(tx, doer, {
        ...{ skuId, placeId, quantity: pieces, editionNumber: null, collectorId: null, phone: '' },
        ...{ forWhom: 'Marit Oland', note: '', untilAt: new Date('2026-12-01T00:00:00Z') },
      }),
    );
    if (held.ok) holds.push(held.value.holdId);
  } else if (what === 'end') {
    await inTransaction((tx) => endHold(tx, doer, { holdId, how: 'released' }));
  } else if (what === 'sell') {
    await sellNow(doer, aSale([{ piece, quantity: pieces }]));
  } else if (what === 'move') {
    const moved = { movedOn: '2026-11-20', pieces: [{ skuId, quantity: pieces }] } as const;
    const [fromId, toId] = which < 6 ? [placeId, backRoomId] : [backRoomId, placeId];
    await inTransaction((tx) => moveStock(tx, doer, { fromId, toId, ...moved }));
  } else if (what === 'made') {
    const made = { skuId, placeId, quantity: pieces, reason: 'made', unitCostCents: null } as const;
    await inTransaction(async (tx) => ok(await bringIntoStock(tx, doer, [made])));
  } else {
    await knock(skuId, pieces, holdId);
  }
}

/** Straight at the tables, past every rule of the program. */
async function knock(skuId: string, pieces: number, holdId: string): Promise<void> {
  const knocks = [
    sql('update "Hold" set quantity = quantity + $2 where id = $1', [holdId, pieces]),
    sql('update "StockLevel" set held = 0 where "skuId" = $1', [skuId]),
    sql(
      `insert into "Hold" (id, "skuId", "placeId", quantity, "forWhom", "untilAt", "staffId", at)
       values (gen_random_uuid(), $1, $2, 1000, 'Nobody', now(), $3, now())`,
      [skuId, gallery.counterId, gallery.clerk.id],
    ),
  ];
  const names = await Promise.all(
    knocks.map((one) =>
      one.then(
        () => 'let through',
        (error: unknown) => constraintOf(error),
      ),
    ),
  );
  const [changed = '', ...others] = names;
  // An id that is no hold's changes nothing, and so meets nothing.
  expect(['let through', 'hold_ends_once']).toContain(changed);
  expect(others).toEqual(['level_only_by_movement', 'holds_never_exceed_on_hand']);
}

/** What the tables say, by SQL of its own. */
async function counted(skuId: string) {
  return sql<{ onHand: number; held: number; open: number; moved: number }>(
    `select level."onHand", level.held,
       coalesce((select sum(quantity) from "Hold" where "skuId" = level."skuId"
         and "placeId" = level."placeId" and "endedAt" is null), 0)::int as open,
       coalesce((select sum(quantity) from "StockMovement" where "skuId" = level."skuId"
         and "placeId" = level."placeId"), 0)::int as moved
     from "StockLevel" level where level."skuId" = $1`,
    [skuId],
  );
}

test.prop(
  [fc.array(fc.array(wish, { minLength: 1, maxLength: 3 }), { minLength: 4, maxLength: 9 })],
  {
    numRuns: 8,
    endOnFailure: true,
  },
)(
  'whatever is held, ended, sold, moved and made at once, no more is held than is here',
  async (rounds) => {
    count += 1;
    const named = { sku: `TERN-${count}`, title: `Tern ${count}` };
    const piece = await aPieceHere(gallery, { ...named, priceCents: 1_000n, here: 5 });
    const play: Play = { piece, holds: [] };
    for (const round of rounds) {
      await Promise.all(round.map((one) => fulfil(play, one)));
      for (const { onHand, held, open, moved } of await counted(piece.skuId)) {
        expect([held, onHand]).toEqual([open, moved]);
        expect(held).toBeGreaterThanOrEqual(0);
        expect(held).toBeLessThanOrEqual(onHand);
      }
    }
  },
  120_000,
);
