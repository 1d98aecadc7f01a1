import { ok, refuse, type Result } from '@/lib/platform/result';
import { mostG, mostUm, umPerInch } from '@/lib/units/rules';

/** The three sides of a box or a piece, in whole micrometres. */
export type Sides = {
  readonly lengthUm: number;
  readonly widthUm: number;
  readonly heightUm: number;
};

/** A box with what it weighs, in whole grams. */
export type Weighed = Sides & { readonly weightG: number };

/** Why a box was not reckoned. */
export type MeasureRefusal =
  | { code: 'nothing_to_reckon' }
  | { code: 'side_out_of_range'; side: keyof Sides }
  | { code: 'weight_out_of_range' };

/** Says in a full sentence why a box was not reckoned. */
export function measureRefusalMessage(refusal: MeasureRefusal): string {
  switch (refusal.code) {
    case 'nothing_to_reckon':
      return 'There is no box yet. Put something into one first.';
    case 'side_out_of_range':
      return `The ${sideWords[refusal.side]} of a box is more than zero and at most 100 metres.`;
    case 'weight_out_of_range':
      return 'A box weighs more than zero and at most 100 tonnes.';
  }
}

const sideWords: Readonly<Record<keyof Sides, string>> = {
  lengthUm: 'length',
  widthUm: 'width',
  heightUm: 'height',
};

/**
 * A box whose measures can be reckoned with.
 *
 * @returns refuses, in this order: a side that is no whole micrometre of 1 to a hundred metres, a
 *   weight that is no whole gram of 1 to a hundred tonnes
 */
export function soundBox<Box extends Weighed>(box: Box): Result<Box, MeasureRefusal> {
  for (const side of ['lengthUm', 'widthUm', 'heightUm'] as const) {
    if (!isWithin(box[side], mostUm)) return refuse({ code: 'side_out_of_range', side });
  }
  return isWithin(box.weightG, mostG) ? ok(box) : refuse({ code: 'weight_out_of_range' });
}

function isWithin(measure: number, most: number): boolean {
  return Number.isInteger(measure) && measure > 0 && measure <= most;
}

/** The sides from the shortest to the longest, in whole micrometres. */
export function sortedSides(sides: Sides): [number, number, number] {
  const { lengthUm, widthUm, heightUm } = sides;
  const longest = Math.max(lengthUm, widthUm, heightUm);
  const shortest = Math.min(lengthUm, widthUm, heightUm);
  return [shortest, lengthUm + widthUm + heightUm - longest - shortest, longest];
}

/**
 * The way round a box across its longest side, in whole micrometres: twice the two others.
 *
 * @source common practice of parcel carriers
 * @example girthUm of 30 × 20 × 10 in // 60 in
 */
export function girthUm(sides: Sides): number {
  const [shortest, middle] = sortedSides(sides);
  return 2 * (shortest + middle);
}

/** The largest that a parcel carrier takes as one parcel. */
export const parcelMost = {
  /** 150 lb, in whole grams, rounded. */
  weightG: 68_039,
  longestUm: 108 * umPerInch,
  longestAndGirthUm: 165 * umPerInch,
} as const;

/** What a box is too much of for one parcel. */
export type BeyondParcel = 'too_heavy' | 'too_long' | 'too_large_round';

/**
 * What a box is too much of to go as one parcel; nothing for one that may.
 *
 * @source 150 lb, 108 in long, 165 in long and round: usual limits of parcel carriers, from memory
 */
export function beyondParcel(box: Weighed): BeyondParcel[] {
  const longest = sortedSides(box)[2];
  const beyond: BeyondParcel[] = [];
  if (box.weightG > parcelMost.weightG) beyond.push('too_heavy');
  if (longest > parcelMost.longestUm) beyond.push('too_long');
  if (longest + girthUm(box) > parcelMost.longestAndGirthUm) beyond.push('too_large_round');
  return beyond;
}

/** An opening that a box has to go through: a door, a lift, a turn of the stairs. */
export type Opening = { readonly widthUm: number; readonly heightUm: number };

/** Room for hands and a blanket on both sides of a box together, in whole micrometres. */
const roomForHandsUm = 2 * umPerInch;

/**
 * Whether a box goes through an opening, carried straight and turned as suits.
 *
 * @returns `tight` where less than two inches are left either way: measure again before the day
 * @source common practice; tilting and turning behind the door are not reckoned
 * @example a box of 40 × 30 × 10 in through a door of 31 × 80 in // 'fits': 10 across, 30 upright
 */
export function fitsThrough(sides: Sides, opening: Opening): 'fits' | 'tight' | 'no' {
  const [shortest, middle] = sortedSides(sides);
  const [narrow, wide] = [opening.widthUm, opening.heightUm].toSorted((a, b) => a - b);
  const room = Math.min((narrow ?? 0) - shortest, (wide ?? 0) - middle);
  if (room < 0) return 'no';
  return room < roomForHandsUm ? 'tight' : 'fits';
}
