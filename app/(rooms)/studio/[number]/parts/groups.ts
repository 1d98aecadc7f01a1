import type { PartMapShown } from '@/lib/studio/reads/parts/map';
import { placeName } from '@/lib/studio/rules';
import { stateAt } from '@/lib/studio/rules/parts/fates';
import type { Choosable, Group } from './part-board';

/** Numbers by where they stand, from not begun to finished; the lost ones last. */
export function placesOf({ numbers, steps }: PartMapShown): Group[] {
  const positions = Array.from({ length: steps.length + 2 }, (_, position) => position);
  return [...positions, -1].flatMap((position) => {
    const there = numbers.filter(({ best }) => (best?.position ?? -1) === position);
    if (there.length === 0) return [];
    return [
      {
        key: String(position),
        name: placeName({ steps }, position),
        numbers: there.map(({ number }) => number),
        state: stateAt(steps, position),
      },
    ];
  });
}

/** Numbers by their colour area, in the order of their first number. */
export function areasOf({ shapes }: PartMapShown): Group[] {
  const names = [...new Set(shapes.map(({ area }) => area))].filter((name) => name !== '');
  return names.map((name) => ({
    key: name,
    name,
    numbers: shapes.flatMap(({ number, area }) => (area === name ? [number] : [])),
    state: null,
  }));
}

/** The parts that can be chosen: what is left of each number. */
export function choosableOf({ numbers }: PartMapShown): Choosable[] {
  return numbers.flatMap(({ living, best }) =>
    living.map(({ id, number, position }) => ({ id, number, position, isBest: id === best?.id })),
  );
}

/** By position, where parts go next; null behind the last step. */
export function nextNamesOf(steps: readonly { name: string }[]): (string | null)[] {
  return [...steps.map((_, position) => placeName({ steps }, position + 1)), 'finished', null];
}
