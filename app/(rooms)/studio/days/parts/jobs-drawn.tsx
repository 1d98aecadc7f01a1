import Link from 'next/link';
import type { Day } from '@/lib/dates/rules';
import type { ToldJob } from '@/lib/studio/reads/forecast/tell';
import { driveLine, lateInHundred, tellDrives } from '@/lib/studio/rules/forecast/telling/words';
import { DayLine, MonthLine } from './day-line';
import { lateWords, readySentence } from './sentences';
import { scaleOf } from './scale';
import css from '../days.module.css';

type JobsDrawnProps = Readonly<{
  jobs: readonly ToldJob[];
  benchNames: ReadonlyMap<string, string>;
  todayOn: Day;
}>;

/** All open jobs on one line of time, those most likely late first. */
export function JobsDrawn({ jobs, benchNames, todayOn }: JobsDrawnProps) {
  const scale = scaleOf(
    todayOn,
    jobs.flatMap(({ of, told }) => [told.readyOn.in95, told.readyOn.in80, of.neededOn]),
  );
  return (
    <div className={css['jobs']}>
      <div className={css['head']}>
        <span className={css['quiet']}>today, at the left</span>
        <MonthLine scale={scale} />
      </div>
      <ol>
        {jobs.map(({ of, told }) => {
          const drives = tellDrives(told.drives, benchNames).slice(0, 3);
          return (
            <li key={of.job.id} className={css['job']}>
              <div className={css['whose']}>
                <h3>
                  <Link href={`/studio/${of.number}`}>
                    <cite className="work-title">{of.title}</cite>
                  </Link>
                </h3>
                <p className={css['quiet']}>
                  Job {of.number}
                  {of.commission ? `, for ${of.commission.collector}` : ''}
                </p>
                <Late late={lateInHundred(told)} neededOn={of.neededOn} todayOn={todayOn} />
              </div>
              <div>
                <DayLine scale={scale} told={told.readyOn} neededOn={of.neededOn} />
                <p>{readySentence(told.readyOn, todayOn)}</p>
                <p className={css['quiet']}>
                  {drives.length > 0 ? `Most of it: ${drives.map(driveLine).join('; ')}.` : null}
                </p>
              </div>
            </li>
          );
        })}
      </ol>
    </div>
  );
}

type LateProps = Readonly<{ late: number | null; neededOn: Day | null; todayOn: Day }>;

function Late({ late, neededOn, todayOn }: LateProps) {
  if (late === null || neededOn === null) return <p className={css['quiet']}>No day is needed.</p>;
  return (
    <p className={late > 20 ? css['late'] : undefined}>{lateWords(late, neededOn, todayOn)}</p>
  );
}
