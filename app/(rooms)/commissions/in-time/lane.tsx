import type { InTimeTold } from '@/lib/commissions/reads/course/in-time';
import {
  dayAt,
  timeMarkWords,
  type TimeMark,
  type TimeScale,
} from '@/lib/commissions/rules/course/list/in-time';
import { formatDay, type Day } from '@/lib/dates/rules';
import css from './in-time.module.css';

/** How wide a day is drawn, in pixels. */
export const perDay = 3.4;

const height = 56;
const line = 36;
const letterWidth = 6.6;

const shortWords: Readonly<Record<TimeMark, string>> = {
  asked: 'asked',
  agreed: 'agreed',
  sketch: 'sketch',
  colours: 'colours',
  promised: 'promised',
  told: 'told',
  hanging: 'hangs',
};

type LaneProps = Readonly<{ row: InTimeTold; scale: TimeScale; today: Day }>;

/** One commission from left to right: its marks in their days, named where there is room. */
export function Lane({ row, scale, today }: LaneProps) {
  const at = (day: Day) => dayAt(scale, day) * perDay;
  const width = scale.days * perDay;
  const marks = row.marks
    .map((mark) => ({ ...mark, x: at(mark.on) }))
    .toSorted((one, other) => one.x - other.x);
  return (
    <svg className={css['lane']} width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
      <title>{spoken(row)}</title>
      {scale.months.map(({ on, at: days }) => (
        <line key={on} className={css['month']} x1={days * perDay} x2={days * perDay} y2={height} />
      ))}
      <line className={css['ground']} x2={width} y1={line} y2={line} />
      {row.making ? (
        <Span className="making" from={at(row.making.fromOn)} to={at(row.making.toOn)} />
      ) : null}
      {row.late ? (
        <line
          className={css['late']}
          x1={at(row.late.fromOn)}
          x2={at(row.late.toOn)}
          y1={line}
          y2={line}
        />
      ) : null}
      <line className={css['now']} x1={at(today)} x2={at(today)} y2={height} />
      {marks.map(({ kind, on, x }, index) => (
        <g key={kind} transform={`translate(${x} ${line})`}>
          <title>{`${timeMarkWords[kind]} ${formatDay(on, 'long')}`}</title>
          <MarkShape kind={kind} />
          {hasRoom(shortWords[kind], x, marks[index + 1]?.x ?? width) ? (
            <text className={css['word']} x={-4} y={-14}>
              {shortWords[kind]}
            </text>
          ) : null}
        </g>
      ))}
    </svg>
  );
}

function hasRoom(word: string, x: number, nextX: number): boolean {
  return nextX - x > word.length * letterWidth + 4;
}

function Span({ className, from, to }: Readonly<{ className: string; from: number; to: number }>) {
  return (
    <rect
      className={css[className]}
      x={from}
      y={line - 4}
      width={Math.max(to - from, 3)}
      height={8}
      rx={4}
    />
  );
}

/** The shape of a mark, round its day. */
export function MarkShape({ kind }: Readonly<{ kind: TimeMark }>) {
  if (kind === 'asked') return <circle className={css['open']} r={4} />;
  if (kind === 'agreed')
    return <rect className={css['full']} x={-5} y={-5} width={10} height={10} />;
  if (kind === 'sketch') return <path className={css['open']} d="M0-7 7 0 0 7-7 0Z" />;
  if (kind === 'colours') return <path className={css['full']} d="M0-7 7 0 0 7-7 0Z" />;
  if (kind === 'promised') return <path className={css['promise']} d="M0 8V-9L9-4.5 0 0" />;
  if (kind === 'told') return <path className={css['told']} d="M0 8V-9L9-4.5 0 0" />;
  return <circle className={css['hung']} r={6} />;
}

function spoken({ title, marks }: InTimeTold): string {
  const days = marks.map(({ kind, on }) => `${timeMarkWords[kind]} ${formatDay(on, 'long')}`);
  return `${title}: ${days.join('; ')}`;
}
