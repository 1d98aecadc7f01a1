import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';
import type { Exposure, WallKind } from '@/lib/commissions/rules/words';
import { handsFromG } from '@/lib/walls/rules/lifting/weights';
import { frostCautions, type BodyFacts } from './frost';
import { placesNamed } from './places';
import { weightEstimate } from './weight';

export type { BodyFacts } from './frost';
export { meanDepthUm, weightEstimate, type WeightEstimate } from './weight';

/** From here on two people carry: 50 lb, in grams. */
export const twoPeopleG = handsFromG.two;
/** From here on three people carry, or a lift: 100 lb, in grams. */
const threePeopleG = handsFromG.three;
/** Beyond this a thing on the wall of a passage is in the way: 4 in, in micrometres. */
const inThePassageUm = 101_600;

/** What is known of the piece and its wall; null, or left out, is "not known yet". */
export type PlaceFacts = {
  readonly widthUm: number | null;
  readonly heightUm: number | null;
  readonly exposure: Exposure | null;
  readonly wall: WallKind | null;
  readonly depthUm?: number | null;
  /** The room in the collector's words; what it names is minded. */
  readonly room?: string | null;
  readonly freezes?: boolean | null;
  readonly sun?: 'none' | 'some' | 'full' | null;
  readonly forFood?: boolean | null;
  readonly body?: BodyFacts | null;
};

/**
 * What to mind about a piece and its wall, as far as it is known; one line each.
 *
 * Where it lives comes first, then the wall, then the hands it takes. Nothing is guessed: steam, a
 * seat below or a passage count only where the room names them.
 *
 * @source frost: see {@link frostCautions}; the rest is common practice, named beside each
 * @example a heavy piece on gypsum board without a stud is warned of; an unknown wall is asked for
 */
export function placeCautions(facts: PlaceFacts, system: LengthSystem): string[] {
  return [
    ...frostCautions(facts),
    ...purposeCautions(facts),
    ...roomCautions(facts, system),
    ...weightCautions(facts, system),
  ];
}

/**
 * Food: common practice; whether a glaze gives off lead or cadmium only a leach test tells, and a
 * relief has none. Sun: common practice; fired glaze keeps its colour, what joins and seals it may
 * not.
 */
function purposeCautions({ forFood, sun }: PlaceFacts): string[] {
  const cautions: string[] = [];
  if (forFood === true) {
    cautions.push(
      'No leach test of its glazes is known: not for food. Say so in writing, or have the glaze tested by a laboratory first.',
    );
  }
  if (sun === 'full') {
    cautions.push(
      'In full sun the clay grows hot and joints, glue and sealer age: ask their makers what they stand.',
    );
  }
  return cautions;
}

/**
 * Common practice. The 4 inches in a passage are those of the 2010 ADA Standards for ways that the
 * public uses (section 307.2, from memory): in a house it is a question of shoulders.
 */
function roomCautions({ room, depthUm }: PlaceFacts, system: LengthSystem): string[] {
  const named = placesNamed(room ?? '');
  const cautions: string[] = [];
  if (named.has('steam')) {
    cautions.push(
      'Steam and grease reach it there: a closed glaze, tight joints, nothing that swells behind it. Around a range or a shower, local code and a licensed contractor decide.',
    );
  }
  if (named.has('below')) {
    cautions.push(
      'People sit or lie below it: fix it into the structure with a second hold, by the rating of the fixing’s maker.',
    );
  }
  if (named.has('passage') && (depthUm ?? 0) > inThePassageUm) {
    cautions.push(
      `Deeper than ${formatLength(inThePassageUm, system)} in a passage it stands in the way: where the public passes, access rules may forbid it. Ask the local building office.`,
    );
  }
  return cautions;
}

/** Common practice; a wall is the business of local code and of licensed trades. */
function weightCautions(facts: PlaceFacts, system: LengthSystem): string[] {
  const weightG = weightEstimate(facts, system)?.weightG ?? 0;
  if (weightG < twoPeopleG) return [];
  const told = formatWeight(weightG, system === 'in' ? 'lb' : 'kg');
  const cautions: string[] = [];
  if (facts.wall === 'gypsum_board') {
    cautions.push(
      `About ${told} must not hang on gypsum board alone: find the studs, or let a licensed contractor put backing in.`,
    );
  }
  if (facts.wall === null) {
    cautions.push(`About ${told}: find out what the wall is made of before a day is booked.`);
  }
  const hands = weightG >= threePeopleG ? 'Three people or a lift' : 'Two people';
  return [...cautions, `${hands} for about ${told}.`];
}
