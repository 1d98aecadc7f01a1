import Link from 'next/link';
import type { InTimeTold } from '@/lib/commissions/reads/course/in-time';
import {
  dayAt,
  timeMarks,
  timeMarkWords,
  timeScale,
  type TimeScale,
} from '@/lib/commissions/rules/course/list/in-time';
import { formatDay, type Day } from '@/lib/dates/rules';
import { Lane, MarkShape, perDay } from './lane';
import css from './in-time.module.css';

type LanesProps = Readonly<{ rows: readonly InTimeTold[]; today: Day }>;

/** A lane for each commission under the months, today drawn through all of them. */
export function Lanes({ rows, today }: LanesProps) {
  const scale = timeScale(rows, today);
  return (
    <figure className={css['figure']}>
      <Key />
      <div className={css['scroll']} tabIndex={0} role="region" aria-label="Drawn in time">
        <Months scale={scale} today={today} />
        <ol className={css['lanes']}>
          {rows.map((row) => (
            <li key={row.number} className={css['row']}>
              <p className={css['name']}>
                <Link href={`/commissions/${row.number}`}>{row.title}</Link>
                <span>
                  {row.number}, for {row.collector}
                </span>
                <span className="heard-only">. {row.sentence}</span>
              </p>
              <Lane row={row} scale={scale} today={today} />
            </li>
          ))}
        </ol>
      </div>
    </figure>
  );
}

/** The shapes by their names, for those whose lane has no room for words. */
function Key() {
  return (
    <ul className={css['key']}>
      {timeMarks.map((kind) => (
        <li key={kind}>
          <svg width={18} height={18} viewBox="-9 -9 18 18" aria-hidden="true">
            <MarkShape kind={kind} />
          </svg>
          {timeMarkWords[kind]}
        </li>
      ))}
      <li>
        <svg width={28} height={18} viewBox="0 -9 28 18" aria-hidden="true">
          <rect className={css['making']} x={0} y={-4} width={28} height={8} rx={4} />
        </svg>
        in the making
      </li>
      <li>
        <svg width={28} height={18} viewBox="0 -9 28 18" aria-hidden="true">
          <line className={css['late']} x1={0} y1={0} x2={28} y2={0} />
        </svg>
        over the promised day
      </li>
    </ul>
  );
}

function Months({ scale, today }: Readonly<{ scale: TimeScale; today: Day }>) {
  return (
    <div className={css['months']} aria-hidden="true">
      <span className={css['corner']} />
      <div className={css['month-names']} style={{ width: `${scale.days * perDay}px` }}>
        {scale.months.map(({ on, at }) => (
          <span key={on} style={{ left: `${at * perDay}px` }}>
            {monthName(on)}
          </span>
        ))}
        <span className={css['today']} style={{ left: `${dayAt(scale, today) * perDay}px` }}>
          today
        </span>
      </div>
    </div>
  );
}

/** 'May', and in January the year with it. */
function monthName(on: Day): string {
  const [, name = ''] = formatDay(on, 'short').split(' ');
  return on.slice(5, 7) === '01' ? `${name} ${on.slice(0, 4)}` : name;
}
