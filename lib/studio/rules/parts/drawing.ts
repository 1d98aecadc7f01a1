import { leastArea } from './corners';
import { partsLeast, partsMost } from './laying';
import { areaOf, boxOf, isSimple, type Shape } from './outline';
import { doBoxesMeet, sharedArea } from './overlap';

/** What is wrong with a drawing. */
export type DrawingFault =
  | { code: 'nothing_drawn' }
  | { code: 'too_many_parts'; parts: number }
  | { code: 'numbers_not_in_order'; missing: number }
  | { code: 'part_crosses_itself'; number: number }
  | { code: 'part_too_small'; number: number }
  | { code: 'parts_overlap'; number: number; other: number };

/** What two parts may share without it being more than a sliver: this, or a hundredth of the smaller. */
const sliverArea = 30;

/**
 * What is wrong with a drawing, the first fault in the order of {@link DrawingFault}; null when it
 * can be kept.
 */
export function faultOf(shapes: readonly Shape[]): DrawingFault | null {
  if (shapes.length < partsLeast) return { code: 'nothing_drawn' };
  if (shapes.length > partsMost) return { code: 'too_many_parts', parts: shapes.length };
  const numbers = new Set(shapes.map(({ number }) => number));
  for (let number = 1; number <= shapes.length; number += 1) {
    if (!numbers.has(number)) return { code: 'numbers_not_in_order', missing: number };
  }
  for (const { number, outline } of shapes) {
    if (!isSimple(outline)) return { code: 'part_crosses_itself', number };
    if (areaOf(outline) < leastArea) return { code: 'part_too_small', number };
  }
  const [pair] = overlapsIn(shapes);
  return pair ? { code: 'parts_overlap', number: pair[0], other: pair[1] } : null;
}

/** The numbers of parts that lie over one another by more than a sliver, in pairs. */
export function overlapsIn(shapes: readonly Shape[]): [number, number][] {
  const measured = shapes.map((shape) => ({
    shape,
    area: areaOf(shape.outline),
    box: boxOf(shape.outline),
  }));
  return measured.flatMap((one, at) =>
    measured.slice(at + 1).flatMap((other): [number, number][] => {
      if (!doBoxesMeet(one.box, other.box)) return [];
      const most = Math.max(sliverArea, Math.min(one.area, other.area) / 100);
      const isOver = sharedArea(one.shape.outline, other.shape.outline) > most;
      return isOver ? [[one.shape.number, other.shape.number]] : [];
    }),
  );
}
