import { formatDay, type Day } from '@/lib/dates/rules';
import { alignDecimals, parseDecimal, type Decimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** What a piece of ware is, as the limits tell it apart. */
export type WareKind =
  'flatware' | 'small_hollowware' | 'large_hollowware' | 'cup_or_mug' | 'pitcher';

/** A metal that a glaze may give off. */
export type LeachedMetal = 'lead' | 'cadmium';

/** How much of a metal may be given off, in mg in each litre of the test’s acid. */
export type LeachLimit = {
  /** A decimal string. What is exactly at it does not exceed it. */
  readonly mgPerL: string;
  /** Whether six pieces are averaged, or each of them has to hold by itself. */
  readonly of: 'average' | 'each';
};

const each = (mgPerL: string): LeachLimit => ({ mgPerL, of: 'each' });
const average = (mgPerL: string): LeachLimit => ({ mgPerL, of: 'average' });

/**
 * The limits for ware that food is served in.
 *
 * A pitcher counts as large hollowware for cadmium, whatever it holds: the stricter of the two.
 *
 * @source cadmium: FDA CPG 545.400; lead: FDA CPG 545.450, figures as in FDA Food Code 4-101.13; that
 *   flatware is averaged over six for lead too is from memory. Tested by ASTM C738
 */
export const leachLimits: Readonly<Record<LeachedMetal, Readonly<Record<WareKind, LeachLimit>>>> = {
  lead: {
    flatware: average('3.0'),
    small_hollowware: each('2.0'),
    large_hollowware: each('1.0'),
    cup_or_mug: each('0.5'),
    pitcher: each('0.5'),
  },
  cadmium: {
    flatware: average('0.5'),
    small_hollowware: each('0.5'),
    large_hollowware: each('0.25'),
    cup_or_mug: each('0.5'),
    pitcher: each('0.25'),
  },
};

/** Up to this depth inside, in whole micrometres, ware is flat. */
const flatMostUm = 25_000;
/** From this much on, in whole millilitres, hollow ware is large. */
const largeLeastMl = 1_100;

/**
 * What a plate or a bowl is by its measures; a cup, a mug or a pitcher is named so by people.
 *
 * @param insideDepthUm from the lowest point to the level of the rim, in whole micrometres
 * @param holdsMl to the rim, in whole millilitres
 * @source FDA CPG 545.400: flat up to 25 mm deep, small below 1.1 litre
 * @example wareKindOf(25_000, 2_000) // 'flatware', and 25_001 is hollowware
 */
export function wareKindOf(insideDepthUm: number, holdsMl: number): WareKind {
  if (insideDepthUm <= flatMostUm) return 'flatware';
  return holdsMl < largeLeastMl ? 'small_hollowware' : 'large_hollowware';
}

/** What a laboratory found on one piece, in mg in a litre: `0.12`, or `<0.02` where it saw none. */
export type LeachReading = { readonly lead: string; readonly cadmium: string };

/** A leach test as a laboratory reports it. */
export type LeachTest = {
  readonly laboratory: string;
  readonly testedOn: Day;
  readonly ware: WareKind;
  /** One for each piece that was tested. */
  readonly readings: readonly LeachReading[];
};

/** How many pieces of a kind the limits ask to be tested. */
export const piecesTested = 6;

/** Why a test could not be held against the limits. */
export type LeachRefusal =
  | { code: 'no_laboratory' }
  | { code: 'tested_later_than_today' }
  | { code: 'too_few_tested'; tested: number; wanted: number }
  | { code: 'not_a_reading'; text: string };

/** Says in a full sentence why a test could not be held against the limits. */
export function leachRefusalMessage(refusal: LeachRefusal): string {
  switch (refusal.code) {
    case 'no_laboratory':
      return 'Write which laboratory tested it; without one nothing is proven.';
    case 'tested_later_than_today':
      return 'That day is still to come. Write the day on the laboratory’s report.';
    case 'too_few_tested':
      return `The limits are for ${refusal.wanted} pieces; ${refusal.tested} were tested.`;
    case 'not_a_reading':
      return 'Write what was found in mg in a litre, such as 0.12, or <0.02 where none was seen.';
  }
}

/** What a test comes to: whether it holds, and which metals go beyond their limit. */
export type LeachOutcome = {
  readonly holds: boolean;
  readonly beyond: readonly LeachedMetal[];
};

/**
 * Holds a leach test against the limits for its kind of ware.
 *
 * `<0.02` counts as 0.02: no less is proven.
 *
 * @returns refuses, in this order: no laboratory, a day still to come, fewer than six pieces, a
 *   reading that does not read
 * @source {@link leachLimits}
 * @example six mugs at 0.5 mg of lead hold; one at 0.501 does not
 */
export function judgeLeachTest(test: LeachTest, today: Day): Result<LeachOutcome, LeachRefusal> {
  if (test.laboratory.trim() === '') return refuse({ code: 'no_laboratory' });
  if (test.testedOn > today) return refuse({ code: 'tested_later_than_today' });
  const tested = test.readings.length;
  if (tested < piecesTested) {
    return refuse({ code: 'too_few_tested', tested, wanted: piecesTested });
  }
  const beyond: LeachedMetal[] = [];
  for (const metal of ['lead', 'cadmium'] as const) {
    const found: Decimal[] = [];
    for (const { [metal]: text } of test.readings) {
      const reading = parseDecimal(text.trim().replace(/^<\s*/, ''));
      if (!reading || reading.units < 0n) return refuse({ code: 'not_a_reading', text });
      found.push(reading);
    }
    if (isBeyond(found, leachLimits[metal][test.ware])) beyond.push(metal);
  }
  return ok({ holds: beyond.length === 0, beyond });
}

function isBeyond(found: readonly Decimal[], limit: LeachLimit): boolean {
  const most = parseDecimal(limit.mgPerL);
  if (!most) return true;
  const [limitUnits = 0n, ...units] = alignDecimals([most, ...found]).units;
  if (limit.of === 'each') return units.some((reading) => reading > limitUnits);
  const sum = units.reduce((all, reading) => all + reading, 0n);
  return sum > limitUnits * BigInt(units.length);
}

/** What may be said of food on a clay, a glaze and a firing, as the label of a piece keeps it. */
export type ProvenForFood = 'not_proven' | 'decorative_only' | 'proven';

/**
 * What may be said of food, from all tests of one clay, glaze and firing on one kind of ware.
 *
 * The latest test that can be held against the limits decides; of two on one day the worse one.
 * Without any, it is not for food.
 *
 * @param tests of this clay, glaze and firing together; a test of another proves nothing here
 */
export function provenForFood(
  tests: readonly LeachTest[],
  ware: WareKind,
  today: Day,
): ProvenForFood {
  const judged = tests
    .filter((test) => test.ware === ware)
    .flatMap((test) => {
      const outcome = judgeLeachTest(test, today);
      return outcome.ok ? [{ on: test.testedOn, holds: outcome.value.holds }] : [];
    });
  const latest = judged.reduce<Day | null>(
    (last, { on }) => (!last || on > last ? on : last),
    null,
  );
  if (latest === null) return 'not_proven';
  return judged.every(({ on, holds }) => on !== latest || holds) ? 'proven' : 'decorative_only';
}

/** What a test comes to, in words: `Tested by … on 4 May 2026: more lead than is allowed.` */
export function leachWords(test: LeachTest, outcome: LeachOutcome): string {
  const who = `Tested by ${test.laboratory.trim()} on ${formatDay(test.testedOn, 'short')}`;
  if (outcome.holds) return `${who}: within the limits for lead and cadmium.`;
  return `${who}: more ${outcome.beyond.join(' and ')} than is allowed. Not for food.`;
}
