import type { JobStanding, StandingHere } from '@/lib/studio/reads/standing';

/** Where a loss of pieces that stand here is told: by number on the drawing, where there is one. */
export function lossAt(
  job: Pick<JobStanding, 'number' | 'hasParts'>,
  here: Pick<StandingHere, 'position'>,
): string {
  if (job.hasParts) return `/studio/${job.number}/parts`;
  return `/studio/${job.number}/loss?at=${here.position}`;
}
