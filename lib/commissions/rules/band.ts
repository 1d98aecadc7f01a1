import type { Day } from '@/lib/dates/rules';
import { pegProgress, type PegProgress } from '@/lib/studio/rules/days';
import { approvedOf, depositThereOn, type CommissionFacts } from './facts';
import type { Where } from './standing';

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
  const next = isOver(where) ? undefined : nextPeg(where, doneOn);
  return bandPegs.map((name) => {
    const on = doneOn[name];
    if (on !== null) return { name, state: 'done', on };
    return { name, state: name === next ? 'next' : 'open', on: null };
  });
}

function isOver(where: Where): boolean {
  return where.key === 'ended' || where.key === 'handed_over' || where.key === 'rest_owed';
}

function nextPeg(where: Where, doneOn: Record<BandPegName, Day | null>): BandPegName | undefined {
  switch (where.key) {
    case 'to_agree':
      return 'agreed';
    case 'sketch_to_show':
    case 'sketch_shown':
      return 'sketch';
    case 'colours_to_show':
    case 'colours_shown':
      return 'colours';
    case 'deposit_to_ask':
    case 'deposit_asked':
      return 'deposit';
    case 'job_to_open':
    case 'clay_to_begin':
      return 'clay';
    case 'in_the_studio':
      return studioPegs.find((name) => doneOn[name] === null) ?? 'hung';
    case 'hanging_to_book':
    case 'hanging_booked':
    case 'to_hand_over':
      return 'hung';
    case 'rest_owed':
    case 'handed_over':
    case 'ended':
      return undefined;
  }
}

function daysDone(facts: CommissionFacts): Record<BandPegName, Day | null> {
  const progress = facts.jobs.map((job) => pegProgress(job));
  return {
    agreed: facts.agreement?.agreedOn ?? null,
    sketch: approvedOf(facts.sketches)?.approvedOn ?? null,
    colours: approvedOf(facts.colourTiles)?.approvedOn ?? null,
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
