import type { Day } from '@/lib/dates/rules';
import type { ForecastJob, ForecastStanding } from '@/lib/studio/rules/forecast/model';
import type { Happening } from '@/lib/studio/rules/forecast/watch';

/** Pieces of a job at a step: since when, and what holds them. */
type Stand = { position: number; pieces: number; sinceOn: Day; heldBy: string | null };

/** Where the pieces of one job stand while a future goes on. */
export type JobState = { finished: number; waiting: Stand[]; underWay: Stand[] };

/** Jobs that were not begun, before anything has happened. */
export function atFirst(jobs: readonly ForecastJob[]): Map<string, JobState> {
  return new Map(jobs.map((job) => [job.id, { finished: 0, waiting: [], underWay: [] }]));
}

/** Lets one thing happen to a job. */
export function happen(state: JobState, job: ForecastJob, happening: Happening): void {
  const { what, position, pieces, on } = happening;
  const waits = state.waiting.find((stand) => stand.position === position);
  if (what === 'finished') state.finished += pieces;
  if (what === 'arrives') {
    if (waits) waits.pieces += pieces;
    else state.waiting.push({ position, pieces, sinceOn: on, heldBy: null });
  }
  if (what === 'starts') {
    if (!waits || waits.pieces < pieces) throw new Error('pieces began that were not there');
    waits.pieces -= pieces;
    state.waiting = state.waiting.filter((stand) => stand.pieces > 0);
    const step = job.steps[position - 1];
    const bench = step?.kind === 'work' ? step.bench : null;
    state.underWay.push({ position, pieces, sinceOn: on, heldBy: happening.kilnId ?? bench });
  }
  if (what === 'ends') {
    const at = state.underWay.findIndex(
      (stand) => stand.position === position && stand.pieces === pieces,
    );
    if (at < 0) throw new Error('pieces left that were not there');
    state.underWay.splice(at, 1);
  }
}

/** All pieces of a job, wherever they stand. */
export function piecesIn(state: JobState): number {
  const standing = [...state.waiting, ...state.underWay];
  return state.finished + standing.reduce((sum, stand) => sum + stand.pieces, 0);
}

/** The job as somebody would write it down on the morning after. */
export function asItStands(job: ForecastJob, state: JobState): ForecastJob {
  const finished: ForecastStanding = {
    position: job.steps.length + 1,
    pieces: state.finished,
    sinceOn: null,
    heldBy: null,
  };
  return { ...job, standings: [finished, ...state.waiting, ...state.underWay] };
}
