import { ok, refuse, type Result } from '@/lib/platform/result';
import { mostG, type LengthSystem } from '@/lib/units/rules';
import { namedTyped, readNamed, readWeight, weightTyped, type Named } from './line';
import { firstTwice, listMost } from './pieces';

/** Something in a box: how many, what one weighs (0 for paper), and its layer from the bottom, 1. */
export type ContentTold = Named & { readonly weightG: number; readonly layer: number };

/** Why the list of what is in a box was not read; lines count from one. */
export type ContentsRefusal =
  | { code: 'nothing_in_it' }
  | { code: 'too_much_in_it' }
  | { code: 'content_not_read'; line: number; text: string; what: 'name' | 'weight' }
  | { code: 'part_twice'; partNumber: number };

/**
 * Reads what is in a box, one on each line from the bottom up: what it is; weight of one. What has
 * no weight, such as a care sheet, has none behind it. An empty line begins the next layer.
 *
 * @returns refuses, in this order: nothing, a line that does not read, a part that is named twice,
 *   too much for one box
 */
export function readContents(
  text: string,
  unit: LengthSystem,
): Result<ContentTold[], ContentsRefusal> {
  const contents: ContentTold[] = [];
  let [layer, isNext] = [1, false];
  for (const [at, whole] of text.split(/\r?\n/).entries()) {
    const line = whole.trim();
    if (line === '') {
      isNext = contents.length > 0;
      continue;
    }
    if (isNext) [layer, isNext] = [layer + 1, false];
    const read = readContent(line, unit);
    if (typeof read === 'string') {
      const told = { line: at + 1, text: line.slice(0, 60), what: read };
      return refuse({ code: 'content_not_read', ...told });
    }
    contents.push({ ...read, layer });
  }
  if (contents.length === 0) return refuse({ code: 'nothing_in_it' });
  const twice = firstTwice(contents.flatMap(({ partNumber }) => partNumber ?? []));
  if (twice !== null) return refuse({ code: 'part_twice', partNumber: twice });
  return contents.length > listMost.lines ? refuse({ code: 'too_much_in_it' }) : ok(contents);
}

function readContent(
  line: string,
  unit: LengthSystem,
): (Named & { weightG: number }) | 'name' | 'weight' {
  const [name = '', weight, ...more] = line.split(';');
  const named = readNamed(name);
  if (!named || more.length > 0) return 'name';
  if (weight === undefined || weight.trim() === '') return { ...named, weightG: 0 };
  const weightG = readWeight(weight, unit);
  return weightG === null || weightG > mostG ? 'weight' : { ...named, weightG };
}

/** What is in a box, as {@link readContents} reads it. */
export function contentsTyped(contents: readonly ContentTold[], unit: LengthSystem): string {
  return contents
    .map((content, at) => {
      const before = contents[at - 1];
      const gap = before && before.layer !== content.layer ? '\n' : '';
      const each = content.pieces > 1 ? ' each' : '';
      const weight = content.weightG === 0 ? '' : `; ${weightTyped(content.weightG, unit)}${each}`;
      return `${gap}${namedTyped(content)}${weight}`;
    })
    .join('\n');
}

/** What everything in a box weighs together. */
export function contentsWeigh(
  contents: readonly Pick<ContentTold, 'pieces' | 'weightG'>[],
): number {
  return contents.reduce((sum, { pieces, weightG }) => sum + pieces * weightG, 0);
}
