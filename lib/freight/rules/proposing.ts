import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { umPerInch } from '@/lib/units/rules';
import { materials, reckonBox, type BoxKind, type BoxReckoned } from './boxing';
import { fillBoxes, type Filled, type Room, type ToPack } from './filling';
import { soundBox, sortedSides, type MeasureRefusal, type Weighed } from './measures';
import { tierBox, tierOf, type Tier } from './tiers';

/** One piece or part that is to be sent: height × width × depth as it hangs, and its weight. */
export type ToSend = Weighed & {
  readonly key: string;
  /** The number on the drawing; null for a piece that is whole. */
  readonly partNumber: number | null;
};

/** A box as it is proposed, with the keys of what goes into it, layer by layer from the bottom. */
export type ProposedBox = {
  readonly kind: BoxKind;
  readonly tier: Tier;
  readonly paddingUm: number;
  readonly layers: readonly (readonly string[])[];
  readonly reckoned: BoxReckoned;
};

/** How much goes into one box of a kind: a double box for one person, a crate for two and more. */
const rooms: Readonly<Record<'sleeves' | 'crate', Room>> = {
  sleeves: {
    ...{ lengthUm: 16 * umPerInch, widthUm: 16 * umPerInch, heightUm: 12 * umPerInch },
    ...{ mostG: 15_876, gapUm: 2 * materials.closeUm },
  },
  crate: {
    ...{ lengthUm: 44 * umPerInch, widthUm: 32 * umPerInch, heightUm: 14 * umPerInch },
    ...{ mostG: 36_287, gapUm: umPerInch },
  },
};

/**
 * Boxes and crates for what is to be sent: tiles on edge together, panels each in their own, large
 * reliefs each in a crate; the parts of a relief that are no tiles lie in layers in crates of up to
 * 80 lb of clay.
 *
 * @returns every piece in exactly one box, the boxes with the lowest part numbers first; refuses
 *   an empty list, and what {@link soundBox} refuses
 * @source common practice; whoever packs changes it by hand
 */
export function proposeBoxes(pieces: readonly ToSend[]): Result<ProposedBox[], MeasureRefusal> {
  if (pieces.length === 0) return refuse({ code: 'nothing_to_reckon' });
  for (const piece of pieces) {
    const sound = soundBox(piece);
    if (!sound.ok) return refuse(sound.refusal);
  }
  const onEdge = pieces.filter((piece) => tierOf(piece) === 'sleeves');
  const parts = pieces.filter((piece) => piece.partNumber !== null && !onEdge.includes(piece));
  const alone = pieces.filter((piece) => !onEdge.includes(piece) && !parts.includes(piece));

  const together = fillBoxes(onEdge.map(standing), rooms.sleeves);
  const inLayers = fillBoxes(parts.map(flat), rooms.crate);
  const leftOver = [...together.left, ...inLayers.left].map(({ part }) => part);
  const boxes = [
    ...together.boxes.map((filled) => boxOf('sleeves', filled)),
    ...inLayers.boxes.map((filled) => boxOf('crate', filled)),
    ...[...alone.map(flat), ...leftOver].map((piece) => boxOf(tierOf(piece), only(piece))),
  ];
  const place = new Map(pieces.map(({ key }, at) => [key, at]));
  const firstOf = ({ layers }: ProposedBox) =>
    Math.min(...layers.flat().map((key) => place.get(key) ?? 0));
  return ok(boxes.toSorted((one, other) => firstOf(one) - firstOf(other)));
}

/** A piece that lies flat, its face up. */
function flat(piece: ToSend): ToPack {
  const [height, width, length] = sortedSides(piece);
  return {
    key: piece.key,
    weightG: piece.weightG,
    lengthUm: length,
    widthUm: width,
    heightUm: height,
  };
}

/** A tile that stands on its longest edge. */
function standing(piece: ToSend): ToPack {
  const [thin, short, long] = sortedSides(piece);
  return { key: piece.key, weightG: piece.weightG, lengthUm: long, widthUm: thin, heightUm: short };
}

function only(part: ToPack): Filled {
  return { layers: [{ parts: [part], heightUm: part.heightUm }], content: part };
}

function boxOf(tier: Tier, filled: Filled): ProposedBox {
  const asked = tierBox[tier];
  const reckoned = reckonBox(filled.content, asked);
  invariant(reckoned.ok, 'What is sound piece by piece is sound in a box that holds it.');
  return {
    ...{ kind: asked.kind, tier, paddingUm: asked.paddingUm },
    layers: filled.layers.map(({ parts }) => parts.map(({ key }) => key)),
    reckoned: reckoned.value,
  };
}
