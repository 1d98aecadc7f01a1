import type { Day } from '@/lib/dates/rules';
import { pegProgress, type PegProgress } from '@/lib/studio/rules/days';
import {
  approvedOf,
  coloursApprovedOn,
  depositThereOn,
  type CommissionFacts,
} from '@/lib/commissions/rules/facts';
import type { Where, WhereKey } from './where';

/** The pegs of a commission's band, in time. */
export const bandPegs = [
  'agreed',
  'sketch',
  'colours',
  'deposit',
  'clay',
  'dry',
  'bisque',
  'glaze',
  'assembled',
  'hung',
] as const;

/** One of the ten pegs. */
export type BandPegName = (typeof bandPegs)[number];

/** A peg: done on a day, the next one, or still open. */
export type BandPeg = {
  readonly name: BandPegName;
  readonly state: 'done' | 'next' | 'open';
  readonly on: Day | null;
};

const studioPegs = ['clay', 'dry', 'bisque', 'glaze', 'assembled'] as const;

/**
 * The band of a commission: what is done, with its day; what is next; what is to come.
 *
 * A state of the clay is done when every job is past it. A route without an assembly is past it
 * when its pieces are finished.
 *
 * @param where from the standing of the same facts; nothing is next once it was handed over or ended
 * @example a commission that was just asked for has "agreed" next and nine pegs open
 */
export function band(facts: CommissionFacts, where: Where): BandPeg[] {
  const doneOn = daysDone(facts);
  const next = nextPegs[where.key];
  const nextName = next === 'studio' ? studioPegs.find((name) => doneOn[name] === null) : next;
  return bandPegs.map((name) => {
    const on = doneOn[name];
    if (on !== null) return { name, state: 'done', on };
    return { name, state: name === nextName ? 'next' : 'open', on: null };
  });
}

/** Which peg is next; in the studio, the first state of the clay that is not done. */
const nextPegs: Record<WhereKey, BandPegName | 'studio' | null> = {
  to_propose: 'agreed',
  proposal_to_send: 'agreed',
  proposal_out: 'agreed',
  proposal_ran_out: 'agreed',
  to_sign: 'agreed',
  to_agree: 'agreed',
  sketch_to_show: 'sketch',
  sketch_shown: 'sketch',
  colours_to_show: 'colours',
  twin_to_give: 'colours',
  colours_shown: 'colours',
  deposit_to_ask: 'deposit',
  deposit_asked: 'deposit',
  days_to_cancel: 'clay',
  job_to_open: 'clay',
  clay_to_begin: 'clay',
  in_the_studio: 'studio',
  wall_to_look_at: 'hung',
  hanging_to_book: 'hung',
  hanging_booked: 'hung',
  to_hand_over: 'hung',
  rest_owed: null,
  handed_over: null,
  ended: null,
};

/** The day on which each peg was done; null while it is not. */
export function daysDone(facts: CommissionFacts): Record<BandPegName, Day | null> {
  const progress = facts.jobs.map((job) => pegProgress(job));
  return {
    agreed: facts.agreement?.agreedOn ?? null,
    sketch: approvedOf(facts.sketches)?.approvedOn ?? null,
    colours: coloursApprovedOn(facts),
    deposit: depositThereOn(facts),
    clay: pegDoneOn(progress, 'clay'),
    dry: pegDoneOn(progress, 'dry'),
    bisque: pegDoneOn(progress, 'bisque'),
    glaze: pegDoneOn(progress, 'glaze'),
    assembled: pegDoneOn(progress, 'assembled'),
    hung: facts.handOver?.handedOn ?? null,
  };
}

function pegDoneOn(
  jobs: readonly (readonly PegProgress[])[],
  name: (typeof studioPegs)[number],
): Day | null {
  let lastOn: Day | null = null;
  for (const pegs of jobs) {
    const from = pegs.findIndex((peg) => peg.peg === name);
    const here = pegs.slice(from).find((peg) => peg.state !== 'none');
    if (here?.state !== 'done' || here.doneOn === null) return null;
    if (lastOn === null || here.doneOn > lastOn) lastOn = here.doneOn;
  }
  return lastOn;
}
