import {
  judgeLeachTest,
  leachLimits,
  provenForFood,
  type LeachTest,
  type WareKind,
} from '@/lib/clay/rules/leach';
import { formatDay, type Day } from '@/lib/dates/rules';

/** Each kind of ware, in the order of a form. */
export const wareKinds = [
  'flatware',
  'small_hollowware',
  'large_hollowware',
  'cup_or_mug',
  'pitcher',
] as const satisfies readonly WareKind[];

/** A kind of ware in words. */
export const wareWords: Readonly<Record<WareKind, string>> = {
  flatware: 'flat ware',
  small_hollowware: 'small bowls',
  large_hollowware: 'large bowls',
  cup_or_mug: 'cups and mugs',
  pitcher: 'pitchers',
};

/** A kind of ware by its measures, for a form. */
export const wareHints: Readonly<Record<WareKind, string>> = {
  flatware: 'up to 25 mm (an inch) deep inside',
  small_hollowware: 'deeper, and holds less than 1.1 litre',
  large_hollowware: 'deeper, and holds 1.1 litre or more',
  cup_or_mug: 'whatever it holds',
  pitcher: 'whatever it holds',
};

/** What may be said of food on one recipe of a glaze. */
export type FoodWord = {
  readonly use: 'proven' | 'not_within' | 'not_tested';
  /** Reads after the name of a glaze. */
  readonly words: string;
  /** On which ware it is proven. */
  readonly on: readonly WareKind[];
};

/**
 * What may be said of food on a recipe, from its own laboratory tests.
 *
 * A test of another recipe says nothing of this one. Where any kind of ware was found beyond the
 * limits by its latest test, none is called fit for food: people pour what they like into a bowl.
 *
 * @param tests of this recipe alone
 * @source {@link leachLimits}: FDA CPG 545.400 and 545.450; that one ware beyond the limits speaks
 *   against all is the caution of this house
 * @example never tested // 'not for food: no laboratory has tested this recipe'
 */
export function foodWord(tests: readonly LeachTest[], today: Day): FoodWord {
  const standing = wareKinds.map((ware) => ({ ware, use: provenForFood(tests, ware, today) }));
  const beyond = standing.find(({ use }) => use === 'decorative_only');
  if (beyond) {
    const test = latestOf(tests, beyond.ware, today);
    const when = test ? `, tested ${formatDay(test.testedOn, 'short')} by ${test.laboratory}` : '';
    const words = `not for food: more came out of ${wareWords[beyond.ware]} than is allowed${when}`;
    return { use: 'not_within', words, on: [] };
  }
  const proven = standing.filter(({ use }) => use === 'proven').map(({ ware }) => ware);
  const [first] = proven;
  if (first === undefined) {
    const words = 'not for food: no laboratory has tested this recipe';
    return { use: 'not_tested', words, on: [] };
  }
  const said = proven.map((ware) => {
    const test = latestOf(tests, ware, today);
    const by = test ? `: tested ${formatDay(test.testedOn, 'short')} by ${test.laboratory}` : '';
    return `for food on ${wareWords[ware]}${by}`;
  });
  return { use: 'proven', words: said.join('; '), on: proven };
}

/** The test that decided: the latest one that could be judged. */
function latestOf(tests: readonly LeachTest[], ware: WareKind, today: Day): LeachTest | null {
  const judged = tests.filter((test) => test.ware === ware && judgeLeachTest(test, today).ok);
  return judged.reduce<LeachTest | null>(
    (last, test) => (last === null || test.testedOn >= last.testedOn ? test : last),
    null,
  );
}

/** The same in two words, where there is little room. */
export function foodShort({ use }: FoodWord): string {
  return use === 'proven' ? 'for food' : 'not for food';
}

/**
 * The limits of a kind of ware in words.
 *
 * @example limitWords('cup_or_mug') // 'Cups and mugs: lead 0.5 mg/L in each, cadmium 0.5 mg/L in each.'
 */
export function limitWords(ware: WareKind): string {
  const of = (metal: 'lead' | 'cadmium') => {
    const limit = leachLimits[metal][ware];
    const each = limit.of === 'each' ? 'in each' : 'on average';
    return `${metal} ${limit.mgPerL} mg/L ${each}`;
  };
  const name = wareWords[ware];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${of('lead')}, ${of('cadmium')}.`;
}
