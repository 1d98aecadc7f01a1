import type { PartMapShown } from '@/lib/studio/reads/parts/map';
import { stateOf, type NumberNow, type PartState } from '@/lib/studio/rules/parts/fates';
import { labelSpot } from '@/lib/studio/rules/parts/label';
import { placeWords } from '@/lib/studio/rules/parts/words';
import { pathOf, tenths } from './outline-path';

/** A numbered part as the map draws it. */
export type DrawnShape = {
  number: number;
  path: string;
  /** Where its number stands, and how large. */
  at: { x: number; y: number; size: number };
  state: PartState;
  /** What stands for it was begun because another was lost. */
  isAnew: boolean;
  isInKiln: boolean;
  /** What it is in words: `Part 12, stands at drying, made anew`. */
  words: string;
};

/** The parts of a map as they are drawn. */
export function drawnShapes({ shapes, numbers, steps, size }: PartMapShown): DrawnShape[] {
  const aspect = size.heightUm / size.widthUm;
  return shapes.flatMap(({ number, outline }) => {
    const now = numbers.find((each) => each.number === number);
    if (!now) return [];
    const { at, room } = labelSpot(outline, aspect);
    const textSize = Math.min(32, Math.max(10, room * 0.85));
    return {
      number,
      path: pathOf(outline, aspect),
      at: { x: tenths(at[0]), y: tenths(at[1] * aspect), size: tenths(textSize) },
      state: stateOf(steps, now),
      isAnew: now.isAnew,
      isInKiln: now.best?.isInKiln ?? false,
      words: numberWords(steps, now),
    };
  });
}

/** What a number is, in words: `Part 12, stands at drying, made anew`. */
export function numberWords(steps: PartMapShown['steps'], now: NumberNow): string {
  const { best, number, isAnew } = now;
  if (!best) return `Part ${number}, lost`;
  const place = placeWords(steps, best.position);
  return [
    `Part ${number}`,
    best.isInKiln ? `${place}, in the fire` : place,
    ...(isAnew ? ['made anew'] : []),
  ].join(', ');
}
