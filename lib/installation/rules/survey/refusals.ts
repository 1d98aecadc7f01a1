import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { commissionRefusalMessage, type CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { formatInstant } from '@/lib/dates/rules';
import type { LengthSystem } from '@/lib/units/rules';
import { planRefusalMessage, type PlanRefusal } from '@/lib/walls/rules';

/** Why nothing was kept of a wall or of how a piece hangs on it, and the facts that explain each. */
export type WallRefusalFacts = {
  looked_at_meanwhile: { readonly by: string; readonly at: Date };
  not_looked_at: unknown;
  survey_is_old: unknown;
  no_plan: { readonly reasons: readonly PlanRefusal[] };
};

/** The name of a refusal. */
export type WallRefusalCode = keyof WallRefusalFacts;

/** Why nothing was kept of a wall or of how a piece hangs on it. */
export type WallRefusal<Code extends WallRefusalCode = WallRefusalCode> = {
  [One in Code]: { readonly code: One } & WallRefusalFacts[One];
}[Code];

/** Everything that may be said to the form of a survey or of a plan. */
export type AnyWallRefusal =
  WallRefusal | CommissionRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/** In which lengths and weights a refusal is told, and the gallery's own zone. */
export type WallTelling = { readonly system: LengthSystem; readonly zone: string };

type Sentence<Code extends WallRefusalCode> = (
  refusal: WallRefusal<Code>,
  telling: WallTelling,
) => string;

const sentences: { readonly [Code in WallRefusalCode]: Sentence<Code> } = {
  looked_at_meanwhile: ({ by, at }, { zone }) =>
    `${by} wrote down the wall ${formatInstant(at, zone)}, while this page was open. Open it again, so that nothing of theirs is lost.`,
  not_looked_at: () => 'Nobody has looked at the wall yet. Write down what is known of it first.',
  survey_is_old: () =>
    'The wall was looked at again meanwhile. Open the page again and plan on what is known now.',
  no_plan: ({ reasons }, { system }) =>
    reasons.map((reason) => planRefusalMessage(reason, system)).join(' '),
};

/** Says in full sentences why nothing was kept. */
export function wallRefusalMessage(refusal: AnyWallRefusal, telling: WallTelling): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (isOfTheWall(refusal)) return say(refusal, telling);
  return commissionRefusalMessage(refusal);
}

function say<Code extends WallRefusalCode>(
  refusal: WallRefusal<Code>,
  telling: WallTelling,
): string {
  const sentence: Sentence<Code> = sentences[refusal.code];
  return sentence(refusal, telling);
}

function isOfTheWall(refusal: AnyWallRefusal): refusal is WallRefusal {
  return refusal.code in sentences;
}
