import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import {
  readBefore,
  readPieceToOrder,
  type Before,
  type PieceToOrder,
  type WantedBefore,
} from './before';

/** What can be chosen for a piece that is ordered. */
export type OrderChoices = {
  colourways: readonly { id: string; name: string; hasEnded: boolean }[];
  /** The sizes in which this design is made in this kind, its own among them. */
  sizes: readonly { widthUm: number; heightUm: number; depthUm: number | null }[];
};

const choicesMost = 300;

/** The colourways by name, those that are made first, and the sizes of a design in one kind. */
export async function listOrderChoices(
  actor: Actor,
  piece: Pick<PieceToOrder, 'designId' | 'kind'>,
  todayOn: Day,
): Promise<OrderChoices> {
  assertAllowed(actor, 'orders.take');
  const { designId, kind } = piece;
  const [colourways, sizes] = await Promise.all([
    db().colourway.findMany({
      select: { id: true, name: true, endedOn: true },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
      take: choicesMost,
    }),
    db().sku.findMany({
      where: { designId, kind, grade: 'first' },
      distinct: ['widthUm', 'heightUm'],
      select: { widthUm: true, heightUm: true, depthUm: true },
      orderBy: [{ widthUm: 'asc' }, { heightUm: 'asc' }],
      take: choicesMost,
    }),
  ]);
  const told = colourways.map(({ id, name, endedOn }) => ({
    ...{ id, name },
    hasEnded: endedOn !== null && dayFromDate(endedOn) <= todayOn,
  }));
  return {
    colourways: [...told.filter((one) => !one.hasEnded), ...told.filter((one) => one.hasEnded)],
    sizes,
  };
}

/** What the page that takes an order shows before anything is written. */
export async function previewOrder(
  actor: Actor,
  code: string,
  wish: Pick<WantedBefore, 'quantity' | 'technique' | 'wantedOn'> & { colourwayId: string | null },
  todayOn: Day,
): Promise<{ piece: PieceToOrder; before: Before; choices: OrderChoices } | null> {
  assertAllowed(actor, 'orders.take');
  const piece = await readPieceToOrder(db(), { code });
  if (!piece) return null;
  const colourwayId = wish.colourwayId ?? piece.colourwayId;
  const [before, choices] = await Promise.all([
    readBefore(db(), { ...piece, ...wish, colourwayId }, todayOn),
    listOrderChoices(actor, piece, todayOn),
  ]);
  return before && { piece, before, choices };
}
