import { isWhole, wovenShapes } from './corners';
import { cutInTwo, madeOne } from './cutting';
import { overlapsIn } from './drawing';
import { bareShape, likelyArea, partsMost, type AreaSpot } from './laying';
import type { Corner, Outline, Shape } from './outline';

/** Why a drawing was not changed. */
export type EditRefusal =
  | { code: 'not_whole' }
  | { code: 'over_another'; number: number }
  | { code: 'too_many' }
  | { code: 'does_not_cut' }
  | { code: 'choose_two' }
  | { code: 'not_neighbours' }
  | { code: 'would_have_a_hole' };

/** A changed drawing, or why it was not changed. */
export type Edited = { shapes: readonly Shape[] } | { refused: EditRefusal };

/** Says why a drawing was not changed, and what to do. */
export function editRefusalWords(refusal: EditRefusal): string {
  switch (refusal.code) {
    case 'not_whole':
      return 'That outline crosses itself, or is next to nothing. Draw it again.';
    case 'over_another':
      return `That would lie over part ${refusal.number}. Put the corners on its edge.`;
    case 'too_many':
      return `A drawing has at most ${partsMost} parts. Make some of them one first.`;
    case 'does_not_cut':
      return 'The line does not cross that part. Draw it from one side to the other.';
    case 'choose_two':
      return 'Choose two parts that lie side by side.';
    case 'not_neighbours':
      return 'Those two do not share an edge. Choose two that lie side by side.';
    case 'would_have_a_hole':
      return 'Made one, they would have a hole in them. Cut them another way.';
  }
}

/** A drawing with one more part, whose number is the next; neighbours take over its corners. */
export function withPart(
  shapes: readonly Shape[],
  outline: Outline,
  of: { areas: readonly AreaSpot[]; aspect: number },
): Edited {
  if (shapes.length >= partsMost) return { refused: { code: 'too_many' } };
  const corners = shapes.flatMap((shape) => shape.outline);
  const bare = bareShape(shapes.length + 1, outline);
  if (!isWhole(bare.outline)) return { refused: { code: 'not_whole' } };
  const added = { ...bare, area: likelyArea(bare.outline, of.areas, of.aspect) };
  const [woven] = wovenShapes([added], corners);
  const all = [...wovenShapes(shapes, added.outline), woven ?? added];
  const [over] = overlapsIn(all).filter((pair) => pair[1] === added.number);
  return over ? { refused: { code: 'over_another', number: over[0] } } : { shapes: all };
}

/** A drawing in which a part is cut in two along a line; the second half takes the next number. */
export function withCut(
  shapes: readonly Shape[],
  number: number,
  line: readonly [Corner, Corner],
): Edited {
  if (shapes.length >= partsMost) return { refused: { code: 'too_many' } };
  const part = shapes.find((shape) => shape.number === number);
  const cut = part && cutInTwo(part.outline, line);
  if (!cut) return { refused: { code: 'does_not_cut' } };
  const [one, other] = cut.outlines;
  const halved = shapes.map((shape) => (shape === part ? { ...shape, outline: one } : shape));
  const second = { ...part, number: shapes.length + 1, outline: other, hasSpare: false, note: '' };
  return { shapes: wovenShapes([...halved, second], cut.corners) };
}

/** A drawing in which two neighbours are one, under the lower of their numbers. */
export function withOneOf(shapes: readonly Shape[], chosen: readonly number[]): Edited {
  const [one, other, third] = shapes.filter(({ number }) => chosen.includes(number));
  if (!one || !other || third) return { refused: { code: 'choose_two' } };
  const keep = shapes.flatMap((shape) => (shape === one || shape === other ? [] : shape.outline));
  const outline = madeOne(one.outline, other.outline, keep);
  if (typeof outline === 'string') return { refused: { code: outline } };
  const [low, high] = one.number < other.number ? [one, other] : [other, one];
  const merged = shapes.map((shape) => (shape === low ? { ...low, outline } : shape));
  return { shapes: without(merged, [high.number]) };
}

/** A drawing without those parts; the numbers after them close up. */
export function without(shapes: readonly Shape[], gone: readonly number[]): Shape[] {
  return shapes
    .filter(({ number }) => !gone.includes(number))
    .toSorted((one, other) => one.number - other.number)
    .map((shape, at) => ({ ...shape, number: at + 1 }));
}
