import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';
import { adviceFor, handsFor, planFixings, planRefusalMessage } from '@/lib/walls/rules';
import type { FixingPlan, HandsTold, WallFacts } from '@/lib/walls/rules';
import { screws } from '@/lib/walls/rules/fixings/screws';
import { anchorWords, type HangingAsked, type PieceFacts } from '@/lib/walls/rules/plan/asked';

/** A piece and how it is to hang on a wall that was looked at. */
export type PlanToTell = {
  readonly asked: { readonly piece: PieceFacts; readonly hanging: HangingAsked };
  readonly survey: WallFacts;
};

/** A plan in words and figures. */
export type PlanTold = {
  /** Null where by today's figures there is none. */
  readonly plan: FixingPlan | null;
  /** Why there is none; full sentences. */
  readonly why: readonly string[];
  readonly hands: HandsTold | null;
  /** What it is fixed with: `6 No. 12 wood screws, 3 1/2 in long, stainless`. */
  readonly fixings: string | null;
  /** How its strength was worked out, step by step. */
  readonly steps: readonly string[];
  readonly advice: readonly string[];
};

/** How a plan's strength is worked out, in words. */
export const planFormula =
  'The weight is shared by the places where the cleat is fixed; each fixing bears its share down and off the wall. What one may bear in that direction is divided by it.';
/** Where that comes from. */
export const planSource =
  'AWC NDS 2018, sections 12.2 to 12.4, for screws in wood under a permanent load; the maker’s rating for anchors; plain statics; the rest is common practice';

/**
 * A plan worked out anew from what was kept, in the sentences of pages and papers.
 *
 * @param system in which lengths and weights are told
 */
export function planTold({ asked, survey }: PlanToTell, system: LengthSystem): PlanTold {
  const of = { wall: survey, piece: asked.piece, asked: asked.hanging };
  const planned = planFixings(of);
  const plan = planned.ok ? planned.value : null;
  return {
    plan,
    why: planned.ok ? [] : planned.refusal.map((reason) => planRefusalMessage(reason, system)),
    hands: plan && handsOf(plan, asked.piece, system),
    fixings: plan && fixingsWords(asked.hanging, plan, system),
    steps: plan ? stepsOf(plan, asked, system) : [],
    advice: adviceFor(of, system),
  };
}

function handsOf(plan: FixingPlan, piece: PieceFacts, system: LengthSystem): HandsTold | null {
  const raising = { ...piece, standsAtUm: 0, bottomUm: plan.place.piece.bottomUm };
  const hands = handsFor(raising, system);
  return hands.ok ? hands.value : null;
}

function fixingsWords({ fixing }: HangingAsked, plan: FixingPlan, system: LengthSystem): string {
  const many = plan.holes.length;
  const stainless = fixing.isStainless ? ', stainless' : '';
  if (fixing.by === 'screw') {
    const length = formatLength(fixing.lengthUm, system);
    return `${many} ${screws[fixing.screw].words}s, ${length} long${stainless}`;
  }
  const rated = [fixing.ratedPullG, fixing.ratedPushG].map((grams) => weight(grams, system));
  return `${many} ${anchorWords[fixing.anchor]}s rated ${rated[0] ?? ''} pulled out and ${rated[1] ?? ''} sideways, ${formatLength(fixing.embedUm, system)} deep${stainless}`;
}

function weight(grams: number, system: LengthSystem): string {
  return formatWeight(grams, system === 'in' ? 'lb' : 'kg');
}

function stepsOf(
  plan: FixingPlan,
  { piece, hanging }: PlanToTell['asked'],
  system: LengthSystem,
): string[] {
  const told = (grams: number) => weight(grams, system);
  const places = `${plan.atUms.length} ${plan.atUms.length === 1 ? 'place' : 'places'}`;
  const alone = `One bears ${told(plan.bearsPullG)} pulled straight out, and ${told(plan.bearsPushG)} sideways.`;
  const lasting =
    hanging.fixing.by === 'screw'
      ? ['In wood that is nine tenths of the tabled value, because the load stays.']
      : ['That is what its maker rates it for.'];
  return [
    `${told(piece.weightG)} are fixed at ${places}, with ${plan.rows} at each.`,
    `The one that bears most has ${told(plan.pushEachG)} down and ${told(plan.pullEachG)} off the wall: together ${told(plan.loadEachG)}.`,
    alone,
    ...lasting,
    `In the direction of its load it may bear ${told(plan.bearsEachG)}: ${times(plan.factor)} times over.`,
    `${times(plan.factorAsked)} times is asked.`,
  ];
}

/** Down to the tenth below, so that nothing sounds stronger than it is. */
function times(factor: number): string {
  return String(Math.floor(factor * 10) / 10);
}
