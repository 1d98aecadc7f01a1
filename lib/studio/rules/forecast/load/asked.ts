import type { Day } from '@/lib/dates/rules';
import type { Technique } from '@/lib/studio/rules';
import { routeForThickness, thicknessOf } from '@/lib/studio/rules/drying';
import type { RouteStep } from '@/lib/studio/rules/routes';
import type { ForecastJob } from '../model';
import type { KnownSize, LoadFacts } from './facts';
import { forecastSteps, stepsBefore } from './jobs';
import { kilnRoomOf, type SizeFrom } from './sizes';

/** Something that is not begun, and of which a day is asked before a price is given. */
export type AskedJob = {
  readonly technique: Technique;
  readonly route: readonly RouteStep[];
  readonly pieces: number;
  readonly size: KnownSize;
  /** Whether the collector has still to say yes to things before the clay. */
  readonly answersFirst: boolean;
};

/** How a job is called that does not exist yet. */
export const askedJobId = 'asked for';

/**
 * The job of which a day is asked, with today's load before it: it takes its turn behind the jobs
 * that have a day.
 */
export function askedJob(
  facts: LoadFacts,
  asked: AskedJob,
): { job: ForecastJob; sizeFrom: SizeFrom } {
  const { technique, pieces } = asked;
  const steps = routeForThickness(asked.route, thicknessOf(asked.technique, asked.size.depthUm));
  const room = kilnRoomOf(asked.size, null, facts.roomAroundUm);
  const before = stepsBefore(facts, asked.answersFirst ? ['sketch'] : [], null);
  const neededOn: Day | null = null;
  return {
    job: {
      ...{ id: askedJobId, pieces, wanted: pieces, pieceCm3: room.cm3, neededOn },
      steps: [...before, ...forecastSteps(facts, { technique, steps })],
      standings: [{ position: 0, pieces, sinceOn: null, heldBy: null }],
    },
    sizeFrom: room.from,
  };
}
