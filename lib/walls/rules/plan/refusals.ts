import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';
import type { WallKind } from './wall';

/** Why there is no plan, and the facts that explain each; micrometres and grams. */
export type PlanRefusalFacts = {
  wall_not_known: unknown;
  no_such_weight: { readonly mostG: number };
  no_such_size: { readonly mostUm: number; readonly outMostUm: number };
  factor_out_of_range: unknown;
  board_alone: { readonly weightG: number; readonly mostG: number };
  plaster_not_sound: unknown;
  ceiling_not_known: unknown;
  cover_not_known: unknown;
  studs_not_known: unknown;
  wood_outdoors: unknown;
  rusts_outdoors: unknown;
  wrong_fixing: { readonly wall: WallKind; readonly words: string };
  steel_too_light: unknown;
  backing_not_measured: unknown;
  cleat_off_the_piece: unknown;
  below_the_floor: { readonly missingUm: number };
  does_not_fit: { readonly heightUm: number; readonly clearUm: number };
  no_room_above: {
    readonly topUm: number;
    readonly clearUm: number;
    readonly highestMiddleUm: number;
  };
  beyond_the_wall: unknown;
  behind_furniture: { readonly bottomUm: number; readonly furnitureUm: number };
  hits_obstacle: { readonly what: string };
  fixing_near_services: { readonly what: string; readonly atUm: number };
  too_few_studs: { readonly met: number; readonly needed: number; readonly weightG: number };
  middle_beside_studs: unknown;
  too_little_in_wood: { readonly inWoodUm: number; readonly leastUm: number };
  through_the_stud: { readonly inWoodUm: number; readonly depthUm: number };
  cleat_too_low: { readonly rows: number };
  cleat_too_short: unknown;
  not_rated: { readonly what: 'anchor' | 'rail' };
  too_weak: { readonly factor: number; readonly asked: number };
};

/** The name of a reason. */
export type PlanRefusalCode = keyof PlanRefusalFacts;

/** Why there is no plan. */
export type PlanRefusal<Code extends PlanRefusalCode = PlanRefusalCode> = {
  [One in Code]: { readonly code: One } & PlanRefusalFacts[One];
}[Code];

type Say<Code extends PlanRefusalCode> = (
  refusal: PlanRefusal<Code>,
  system: LengthSystem,
) => string;

const pounds = (grams: number, system: LengthSystem) =>
  formatWeight(grams, system === 'in' ? 'lb' : 'kg');

const sentences: { readonly [Code in PlanRefusalCode]: Say<Code> } = {
  wall_not_known: () =>
    'Nobody knows yet what this wall is made of: stop, and prove it with a magnet, drill dust or an inspection hole, or ask a contractor.',
  no_such_weight: ({ mostG }, system) =>
    `A piece for one cleat weighs more than nothing and at most ${pounds(mostG, system)}. Split it into panels, or ask a structural engineer.`,
  no_such_size: ({ mostUm, outMostUm }, system) =>
    `A piece for one cleat has three sides above zero, none over ${formatLength(mostUm, system)}, and stands out at most ${formatLength(outMostUm, system)}.`,
  factor_out_of_range: () => 'Fixings are asked to bear the piece two to four times over.',
  board_alone: ({ weightG, mostG }, system) =>
    `${pounds(weightG, system)} must not hang on gypsum board alone: board crumbles under a load that stays, and above ${pounds(mostG, system)} no fixing in it is to be trusted. Find the studs, or have a licensed contractor put wood in.`,
  plaster_not_sound: () =>
    'The plaster is loose: have it mended before anything is drilled, for it would come down with the cleat.',
  ceiling_not_known: () => 'Measure from the floor to the ceiling first.',
  cover_not_known: () =>
    'Measure how thick the board or plaster is: the length of the screw depends on it.',
  studs_not_known: () =>
    'Find the studs first: how far apart they are, and how far the first is from the left end of the wall.',
  wood_outdoors: () =>
    'No wood outdoors: it swells, rots and lets go. Use a rail of aluminium or stainless steel.',
  rusts_outdoors: () => 'Outdoors the fixings are of stainless steel, and nothing else.',
  wrong_fixing: ({ words }) => words,
  steel_too_light: () =>
    'Studs of light steel (thinner than 20 gauge, or of a gauge nobody knows) give way under such a piece. Have a licensed contractor open the wall and put wood in.',
  backing_not_measured: () =>
    'Measure how thick the wood is that was built in; a photograph from before the wall was closed says it.',
  cleat_off_the_piece: () =>
    'The cleat has to be behind the piece: shorter than it is wide, and below its top edge.',
  below_the_floor: ({ missingUm }, system) =>
    `Its lower edge would be ${formatLength(missingUm, system)} below the floor.`,
  does_not_fit: ({ heightUm, clearUm }, system) =>
    `It is ${formatLength(heightUm, system)} tall, and only ${formatLength(clearUm, system)} are free between the floor and what is above; it also has to be lifted over its cleat. It does not fit on this wall.`,
  no_room_above: ({ topUm, clearUm, highestMiddleUm }, system) =>
    `Its top would be at ${formatLength(topUm, system)}, and the wall is free up to ${formatLength(clearUm, system)}; it also has to be lifted over its cleat. Hang it with its middle at ${formatLength(highestMiddleUm, system)} at most.`,
  beyond_the_wall: () => 'It would stand over the end of the wall. Move its middle.',
  behind_furniture: ({ bottomUm, furnitureUm }, system) =>
    `Its lower edge would be at ${formatLength(bottomUm, system)}, behind what stands there up to ${formatLength(furnitureUm, system)}.`,
  hits_obstacle: ({ what }) => `It would cover ${what}. Move the piece, or have that moved.`,
  fixing_near_services: ({ what, atUm }, system) =>
    `The fixing at ${formatLength(atUm, system)} would be drilled where ${what} may have a wire or a pipe behind it. Move the piece, or have it found and marked by a licensed trade.`,
  too_few_studs: ({ met, needed, weightG }, system) =>
    `The cleat meets ${met === 1 ? 'one stud' : `${met} studs`}, and ${pounds(weightG, system)} want ${needed}. Make the cleat longer, move the piece, or have wood put in.`,
  middle_beside_studs: () =>
    'The middle of the piece has to be between the outermost studs, or on the only one, so that it hangs level.',
  too_little_in_wood: ({ inWoodUm, leastUm }, system) =>
    `${inWoodUm > 0 ? `Only ${formatLength(inWoodUm, system)} of the screw` : 'Nothing of the screw'} would sit in the wood; it takes at least ${formatLength(leastUm, system)}. Take a longer screw.`,
  through_the_stud: ({ inWoodUm, depthUm }, system) =>
    `The screw would go ${formatLength(inWoodUm, system)} into wood that is ${formatLength(depthUm, system)} deep, and into what is behind it. Take a shorter one.`,
  cleat_too_low: ({ rows }) =>
    `There is no room for ${rows} of these above each other on a cleat of this height. Take a higher cleat or thinner screws.`,
  cleat_too_short: () =>
    'There is no room for so many on a cleat of this length, each as far from the next as its maker wants.',
  not_rated: ({ what }) =>
    what === 'anchor'
      ? 'Write what the maker rates the anchor for in this wall, pulled out and sideways, how deep it goes and how far apart.'
      : 'Write what the maker of the rail rates its whole length for.',
  too_weak: ({ factor, asked }) =>
    `These fixings bear it ${inTenths(factor)} times over, and ${asked} times is asked. Take more, longer or thicker ones.`,
};

/** Down to the tenth below, so that nothing sounds stronger than it is. */
function inTenths(factor: number): string {
  return String(Math.floor(factor * 10) / 10);
}

/**
 * Says in full sentences why there is no plan.
 *
 * @param system in which lengths and weights are told
 */
export function planRefusalMessage(refusal: PlanRefusal, system: LengthSystem): string {
  return say(refusal, system);
}

function say<Code extends PlanRefusalCode>(
  refusal: PlanRefusal<Code>,
  system: LengthSystem,
): string {
  const sentence: Say<Code> = sentences[refusal.code];
  return sentence(refusal, system);
}
