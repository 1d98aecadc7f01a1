import type { JobForecast } from '../forecast';

/** A job with its forecast. */
type Told = { readonly told: Pick<JobForecast, 'shareInTime' | 'readyOn'> };

const farOff = '9999-12-31';

/**
 * Jobs in the order of their risk: those with a day before those without; the one that is late in
 * most futures first, then the one that is ready last.
 */
export function byRisk<Job extends Told>(jobs: readonly Job[]): Job[] {
  const ready = ({ told }: Job) => told.readyOn.in80 ?? farOff;
  return jobs.toSorted((one, other) => {
    const inTime = (one.told.shareInTime ?? 2) - (other.told.shareInTime ?? 2);
    return inTime === 0 ? ready(other).localeCompare(ready(one)) : inTime;
  });
}
