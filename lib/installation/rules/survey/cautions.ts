import { formatLength, type LengthSystem } from '@/lib/units/rules';
import type { SurveyFacts } from './questions';

/** A crate, or the piece in its blankets, takes this much more than the piece: 4 in each way. */
const wrappedUm = 101_600;

/** What is carried through the door; null is "not known yet". */
export type Carried = { readonly widthUm: number | null; readonly heightUm: number | null };

/**
 * What to mind about a wall and its way in, one sentence each.
 *
 * @source common practice
 */
export function surveyCautions(
  facts: SurveyFacts & { readonly heat: string },
  carried: Carried,
  system: LengthSystem,
): string[] {
  return [...wallCautions(facts), ...placeCautions(facts), ...wayCautions(facts, carried, system)];
}

function wallCautions(facts: SurveyFacts): string[] {
  const cautions: string[] = [];
  if (facts.wall === null) {
    cautions.push(
      'Stop: nobody knows yet what the wall is made of. No day for a hanging is booked before; an inspection hole or a contractor tells.',
    );
  }
  if (facts.wall === 'gypsum_board') {
    cautions.push(
      'Board alone holds nothing heavy. Look for studs once more, or have a licensed contractor put wood in.',
    );
  }
  if (facts.wall === 'steel_studs' && facts.hasBacking !== true) {
    cautions.push(
      'Steel studs: have wood put in behind the board where you can, by a licensed contractor.',
    );
  }
  if (facts.wall === 'plaster_on_lath') {
    cautions.push('Plaster: never trust the lath, never hammer; its dust scars the lungs.');
  }
  if (facts.servicesSought !== true) {
    cautions.push(
      'Wires and pipes were not looked for. Find and mark them before anything is drilled; gas, power and water are for licensed trades.',
    );
  }
  return cautions;
}

function placeCautions({
  isOverPeople,
  quakes,
  isOutdoors,
  heat,
}: Parameters<typeof surveyCautions>[0]): string[] {
  const cautions: string[] = [];
  if (isOverPeople === true) {
    cautions.push(
      'People sit, sleep or pass below: fixings that bear it four times over and a second hold, or another wall.',
    );
  }
  if (quakes === true) cautions.push('The ground quakes: a second fixing at the bottom.');
  if (isOutdoors === true) {
    cautions.push('Outdoors: all metal stainless, no wood, a drained back.');
  }
  if (heat.trim() !== '') {
    cautions.push(
      'Near heat, steam or splash local code and a licensed setter decide how far away.',
    );
  }
  return cautions;
}

function wayCautions(
  { narrowWidthUm, narrowHeightUm }: SurveyFacts,
  carried: Carried,
  system: LengthSystem,
): string[] {
  const { widthUm, heightUm } = carried;
  if (narrowWidthUm === null || narrowHeightUm === null) return [];
  if (widthUm === null || heightUm === null) return [];
  const shorter = Math.min(widthUm, heightUm) + wrappedUm;
  const isTooWide = shorter > narrowWidthUm && shorter > narrowHeightUm;
  if (!isTooWide) return [];
  return [
    `Wrapped it takes ${formatLength(shorter, system)} at its narrower side, and the narrowest place on the way is ${formatLength(narrowWidthUm, system)} by ${formatLength(narrowHeightUm, system)}: it does not come in in one part.`,
  ];
}
