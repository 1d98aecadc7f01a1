import type { Day } from '@/lib/dates/rules';
import { billableWeight, type Billable } from '@/lib/freight/rules/billable';
import { freightClass, type FreightClass } from '@/lib/freight/rules/density';
import { handsCautions, handsFor, type Hands } from '@/lib/freight/rules/hands';
import {
  beyondParcel,
  fitsThrough,
  girthUm,
  type BeyondParcel,
  type Opening,
  type Sides,
} from '@/lib/freight/rules/measures';
import { formatCents, type Cents } from '@/lib/money/rules';
import { formatLength, type LengthSystem } from '@/lib/units/rules';
import { coverWords, type CarrierTerms } from './carriers';

/** A box as it is reckoned: its outside, and what it weighs on the scale or about. */
export type BoxMeasured = Sides & { readonly reckonedG: number; readonly scaleG: number | null };

/** What is reckoned of one box. */
export type BoxReckoning = {
  readonly weightG: number;
  readonly isWeighed: boolean;
  readonly girthUm: number;
  readonly hands: Hands;
  /** Null where no carrier's terms were chosen, or it goes by class. */
  readonly billable: Billable | null;
  readonly beyond: readonly BeyondParcel[];
};

/** What is reckoned of a shipment together. */
export type ShipmentReckoning = {
  readonly boxes: readonly BoxReckoning[];
  readonly weightG: number;
  readonly unweighed: number;
  /** Pounds that are charged together; null where no carrier's terms say. */
  readonly billableLb: number | null;
  readonly freight: FreightClass | null;
};

/** What a box weighs: by the scale where it was on one, else about. */
export function weightOf({ scaleG, reckonedG }: Pick<BoxMeasured, 'scaleG' | 'reckonedG'>): number {
  return scaleG ?? reckonedG;
}

/**
 * What a shipment comes to: each box by the carrier's terms, and all together.
 *
 * @param terms null for what goes without a carrier
 */
export function reckonShipment(
  boxes: readonly BoxMeasured[],
  terms: CarrierTerms | null,
  on: Day,
): ShipmentReckoning {
  const reckoned = boxes.map((box) => reckonBoxSent(box, terms));
  const weighed = boxes.map((box) => ({ ...box, weightG: weightOf(box) }));
  const freight = terms?.isFreight === true ? freightClass(weighed, on) : null;
  const counts = terms !== null && !terms.isFreight && boxes.length > 0;
  return {
    boxes: reckoned,
    weightG: reckoned.reduce((sum, { weightG }) => sum + weightG, 0),
    unweighed: reckoned.filter(({ isWeighed }) => !isWeighed).length,
    billableLb: counts
      ? reckoned.reduce((sum, { billable }) => sum + (billable?.billableLb ?? 0), 0)
      : null,
    freight: freight?.ok === true ? freight.value : null,
  };
}

function reckonBoxSent(box: BoxMeasured, terms: CarrierTerms | null): BoxReckoning {
  const weighed = { ...box, weightG: weightOf(box) };
  const billable = terms !== null && !terms.isFreight ? billableWeight(weighed, terms) : null;
  const isParcel = terms !== null && !terms.isFreight && terms.divisorIn3 !== null;
  return {
    ...{ weightG: weighed.weightG, isWeighed: box.scaleG !== null, girthUm: girthUm(box) },
    hands: handsFor(weighed.weightG),
    billable: billable?.ok === true ? billable.value : null,
    beyond: isParcel ? beyondParcel(weighed) : [],
  };
}

/** What a box is too much of, in words. */
export const beyondWords: Readonly<Record<BeyondParcel, string>> = {
  too_heavy: 'over 150 lb',
  too_long: 'over 108 in long',
  too_large_round: 'over 165 in long and round together',
};

/** What to mind before a shipment goes, each in one sentence. */
export function sendingCautions(
  sent: { reckoning: ShipmentReckoning; insuredCents: Cents; insuredBy: string },
  terms: CarrierTerms | null,
): string[] {
  const { reckoning, insuredCents, insuredBy } = sent;
  const cautions: string[] = [];
  const heaviest = Math.max(0, ...reckoning.boxes.map(({ weightG }) => weightG));
  const hands = handsCautions[handsFor(heaviest)];
  if (hands) cautions.push(hands);
  const beyond = reckoning.boxes.flatMap((box, at) =>
    box.beyond.map((each) => `Box ${at + 1} is ${beyondWords[each]}`),
  );
  if (beyond.length > 0) cautions.push(`${beyond.join('; ')}: no parcel carrier takes it as one.`);
  if (terms && insuredCents > terms.coverCents && insuredBy === '') {
    cautions.push(
      `It is worth ${formatCents(insuredCents)}. ${coverWords(terms.coverCents)} A declared ` +
        'value is no insurance, and terms may hold art to less: ask the insurer, and write down ' +
        'who insures it.',
    );
  }
  if (reckoning.unweighed > 0 && reckoning.boxes.length > 0) {
    cautions.push('A weight that nobody took from the scale is a reckoning: weigh before it goes.');
  }
  return cautions;
}

/**
 * What to mind of boxes that have to go through the narrowest place on the way to the wall; nothing
 * where all go through with room for hands.
 *
 * @param unit how the gallery measures
 */
export function wayCautions(
  boxes: readonly Sides[],
  opening: Opening,
  unit: LengthSystem,
): string[] {
  const place = `${formatLength(opening.widthUm, unit)} wide, ${formatLength(opening.heightUm, unit)} high`;
  return boxes.flatMap((box, at) => {
    const fits = fitsThrough(box, opening);
    if (fits === 'fits') return [];
    return fits === 'no'
      ? [`Box ${at + 1} does not go through the narrowest place on the way, ${place}.`]
      : [`Box ${at + 1} goes through the narrowest place on the way, ${place}, with little room.`];
  });
}
