import { wallWords, type WallKind } from '@/lib/commissions/rules/words';
import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';
import type { AppointmentKind } from '@/lib/installation/rules/diary/kinds';

/** Who leads, who goes along, and how long the way is: `Oriel leads, with Tomas; 40 minutes there`. */
export function whoGoes(order: {
  lead: string;
  others: readonly string[];
  travelMinutes: number;
}): string {
  const { lead, others, travelMinutes } = order;
  const along = others.length === 0 ? `${lead}, alone` : `${lead} leads, with ${others.join(', ')}`;
  return travelMinutes === 0 ? along : `${along}; ${travelMinutes} minutes there`;
}

/** What of a survey tells the way in; every part may be missing. */
export type WayIn = {
  readonly access: string;
  readonly steps: number | null;
  readonly narrowWidthUm: number | null;
  readonly narrowHeightUm: number | null;
  readonly lift: string;
  readonly floor: string;
  readonly hasOutlet: boolean | null;
};

/**
 * The way in, from the street to the wall, as far as somebody looked at it.
 *
 * @returns empty where nothing is known
 */
export function wayIn(survey: WayIn | null, system: LengthSystem): string {
  if (!survey) return '';
  const { access, steps, narrowWidthUm, narrowHeightUm, lift, floor, hasOutlet } = survey;
  const narrow = [narrowWidthUm, narrowHeightUm].map((um) =>
    um === null ? null : formatLength(um, system),
  );
  const parts = [
    access,
    steps === null ? '' : stepsWords(steps),
    narrow[0] ? `${narrow[0]} wide at the narrowest` : '',
    narrow[1] ? `${narrow[1]} high at the lowest` : '',
    lift === '' ? '' : `lift: ${lift}`,
    floor === '' ? '' : `floor: ${floor}`,
    hasOutlet === null ? '' : hasOutlet ? 'power at the wall' : 'no power at the wall',
  ];
  return parts
    .map((part) => part.trim().replace(/[.;]+$/, ''))
    .filter((part) => part !== '')
    .join('; ');
}

function stepsWords(steps: number): string {
  if (steps === 0) return 'no steps';
  return steps === 1 ? 'one step' : `${steps} steps`;
}

/** What the wall is and how that was proved; empty where nobody knows, or no wall is needed. */
export function theWall(order: {
  kind: AppointmentKind;
  facts: { wall: WallKind | null };
  survey: { provedHow: string; backing: string } | null;
}): string {
  const { facts, survey } = order;
  if (facts.wall === null) return order.kind === 'hanging' ? '' : 'not looked at';
  const proved = survey?.provedHow.trim() ?? '';
  const backing = survey?.backing.trim() ?? '';
  return [
    wallWords[facts.wall],
    proved === '' ? 'not proved' : `proved by ${lowerFirst(proved)}`,
    backing === '' ? '' : `backing: ${backing}`,
  ]
    .map((part) => part.replace(/[.;]+$/, ''))
    .filter((part) => part !== '')
    .join('; ');
}

function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

const fromWords = {
  scale: 'from the scale',
  plan: 'as planned, not weighed yet',
  agreement: 'as it was proposed, not weighed yet',
  estimate: 'reckoned from its size, not weighed yet',
} as const;

/** What a piece weighs and from what that is known; null where nobody knows. */
export function weightSaid(
  weight: { weightG: number; from: keyof typeof fromWords } | null,
  system: LengthSystem,
): string | null {
  if (!weight) return null;
  const told = formatWeight(weight.weightG, system === 'in' ? 'lb' : 'kg');
  const about = weight.from === 'scale' ? told : `about ${told}`;
  return `${about}, ${fromWords[weight.from]}`;
}
