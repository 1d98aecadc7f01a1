import type { CounterFacts } from '@/lib/counter/rules/facts';
import { emptySlip, type SlipContent, type SlipLine } from '@/lib/counter/rules/slip';
import type { PieceForSale } from '@/lib/sales/rules';

/** The afternoon on which the slips of these tests are sold. */
export const soldAt = new Date('2026-11-20T22:04:00Z');

/** Two people of the gallery: the second may take off as much as she likes. */
export const clerk = '00000000-0000-4000-8000-00000000c1e2';
export const owner = '00000000-0000-4000-8000-0000000000a1';

/** A tile of 180.00, three of which are here. */
export function aPiece(over: Partial<PieceForSale> = {}): PieceForSale {
  return {
    ...{ skuId: 'tern', sku: 'TS-10-CI', designId: 'tern over shoals', title: 'Tern over Shoals' },
    what: 'relief tile, celadon over iron slip · 10 × 10 in · TS-10-CI',
    ...{ size: '10 × 10 in', priceCents: 18_000n, costCents: 4_200n, last: null },
    ...{ onHand: 3, held: 0, making: 'open_stock', grade: 'first', weightG: 3_000 },
    ...over,
  };
}

/** A smaller one, of 96.50. */
export function aFern(over: Partial<PieceForSale> = {}): PieceForSale {
  const names = { skuId: 'fern', sku: 'SF-08-MW', designId: 'sword fern', title: 'Sword Fern' };
  return aPiece({ ...names, priceCents: 9_650n, costCents: null, weightG: 1_000, ...over });
}

/** What is true at the counter: 8 % by two authorities, staff give up to 10 in 100. */
export function someFacts(over: Partial<CounterFacts> = {}): CounterFacts {
  const pieces = [aPiece(), aFern()];
  return {
    ...{ askerId: clerk, askedAt: soldAt, on: '2026-11-20', collectorId: null },
    pieces: new Map(pieces.map((piece) => [piece.skuId, piece])),
    ...{ sets: [], numbers: new Map(), holds: [], roundTaxBy: 'invoice' },
    tax: {
      ...{ place: 'Cedar Landing', state: 'WA', treatments: [], isRegistered: true },
      parts: [
        { name: 'State', ratePercent: '6.5' },
        { name: 'Cedar Landing', ratePercent: '1.5' },
      ],
    },
    ...{ terms: null, referrer: null, certificate: { kind: 'none' }, staffPercent: '10' },
    mayGoBeyond: new Set([owner]),
    papers: { commissions: new Map(), orders: new Map(), layaways: new Map() },
    ...over,
  };
}

type PieceLine = Extract<SlipLine, { kind: 'piece' }>;

/** One tern on its line, or as said. */
export function aLine(over: Partial<PieceLine> = {}): PieceLine {
  return {
    ...{ id: 'line 1', kind: 'piece', skuId: 'tern', quantity: 1, discount: null },
    ...{ numbers: [], holdIds: [], orderId: null },
    ...over,
  };
}

/** A slip with these lines on it. */
export function aSlip(lines: readonly SlipLine[], over: Partial<SlipContent> = {}): SlipContent {
  return { ...emptySlip, lines: [...lines], ...over };
}
