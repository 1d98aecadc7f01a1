import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { daysBetween } from '@/lib/dates/rules';
import {
  lateDaysOf,
  type PastJob,
  type PastPromise,
} from '@/lib/studio/rules/forecast/telling/past';
import css from '../days.module.css';

const reach = 30;
const drawnMost = 40;

/** Something that was ready so many days after its day; below 0 before it. */
export type PastMark = Readonly<{ key: number; late: number }>;

/** Each as a dot: left of the post it was sooner than its day, right of it later; the newest at the foot. */
export function PastDrawn({ marks, post }: Readonly<{ marks: readonly PastMark[]; post: string }>) {
  const drawn = marks.slice(0, drawnMost).toReversed();
  const tall = drawn.length * 14 + 44;
  const at = (days: number) => `${50 + (Math.max(-reach, Math.min(reach, days)) / reach) * 45}%`;
  return (
    <svg className={css['line']} width="100%" height={tall} aria-hidden="true">
      {[-reach, -reach / 2, reach / 2, reach].map((days) => (
        <g key={days}>
          <line x1={at(days)} x2={at(days)} y1="22" y2={tall} className={css['month']} />
          <text x={at(days)} y="14" textAnchor="middle" className={css['month-name']}>
            {Math.abs(days)}
          </text>
        </g>
      ))}
      <text x="50%" y="14" textAnchor="middle" className={css['told']}>
        {post}
      </text>
      <line x1="50%" x2="50%" y1="22" y2={tall} className={css['eighty']} />
      {drawn.map(({ key, late }, row) => {
        const y = 36 + row * 14;
        return (
          <g key={key}>
            <line x1="50%" x2={at(late)} y1={y} y2={y} className={css['month']} />
            <circle cx={at(late)} cy={y} r="5" className={css[late > 0 ? 'later' : 'dark']} />
          </g>
        );
      })}
    </svg>
  );
}

/** The same as a table. */
export function PastTable({ jobs }: Readonly<{ jobs: readonly PastJob[] }>) {
  return (
    <details>
      <summary>The same as a table</summary>
      <Table
        caption="Finished jobs and the days that were first foretold of them"
        captionHeardOnly
        columns={[
          { name: 'Job' },
          { name: 'Foretold on', wideOnly: true },
          { name: 'In 80 of 100' },
          { name: 'Finished' },
          { name: 'Days later', figure: true },
        ]}
        rows={jobs.map((job) => ({
          key: String(job.number),
          cells: [
            `${job.number}, ${job.title}`,
            <DayText key="told" day={job.toldOn} />,
            <DayText key="80" day={job.in80On} />,
            <DayText key="finished" day={job.finishedOn} />,
            lateDaysOf(job),
          ],
        }))}
      />
    </details>
  );
}

/** Promised days and the days of the hand-over. */
export function PromisesTable({ promises }: Readonly<{ promises: readonly PastPromise[] }>) {
  return (
    <details>
      <summary>Each of them, as a table</summary>
      <Table
        caption="Promised days and when each commission was handed over"
        captionHeardOnly
        columns={[
          { name: 'Commission' },
          { name: 'Promised' },
          { name: 'Handed over' },
          { name: 'Days later', figure: true },
        ]}
        rows={promises.map((one) => ({
          key: String(one.commissionNumber),
          cells: [
            `${one.commissionNumber}, ${one.title}`,
            <DayText key="promised" day={one.promisedOn} />,
            <DayText key="handed" day={one.handedOn} />,
            daysBetween(one.promisedOn, one.handedOn),
          ],
        }))}
      />
    </details>
  );
}
