import type { Day } from '@/lib/dates/rules';
import { shortDay } from '@/lib/studio/rules/words';
import { monthsOn, placeOf, type Scale } from './scale';
import css from '../days.module.css';

/** Three days that are foretold: ready in so many of 100; null is beyond two years. */
export type ThreeFolds = Readonly<{ in50: Day | null; in80: Day | null; in95: Day | null }>;

type DayLineProps = Readonly<{
  scale: Scale;
  told: ThreeFolds;
  neededOn?: Day | null | undefined;
}>;

const percent = (at: number) => `${at}%`;

/** The days of one job on a line: dark up to the 80-day, pale up to the 95-day, the needed day a post. */
export function DayLine({ scale, told, neededOn = null }: DayLineProps) {
  const [at50, at80, at95] = [told.in50, told.in80, told.in95].map((day) => placeOf(scale, day));
  const [from = 0, to = 0, end = 0] = [at50, at80, at95];
  const isLeft = to > 70;
  return (
    <svg className={css['line']} width="100%" height="64" aria-hidden="true">
      <Months scale={scale} height={64} />
      <rect x="0" y="30" width="100%" height="8" rx="4" className={css['groove']} />
      <rect
        x={percent(from)}
        y="24"
        width={percent(end - from)}
        height="20"
        className={css['pale']}
      />
      <rect
        x={percent(from)}
        y="24"
        width={percent(to - from)}
        height="20"
        className={css['dark']}
      />
      <line x1={percent(to)} x2={percent(to)} y1="20" y2="48" className={css['eighty']} />
      <text
        x={percent(to)}
        dx={isLeft ? -6 : 6}
        y="60"
        textAnchor={isLeft ? 'end' : 'start'}
        className={css['told']}
      >
        {told.in80 ? shortDay(told.in80, scale.fromOn) : 'beyond two years'}
      </text>
      {neededOn ? <Needed at={placeOf(scale, neededOn)} /> : null}
    </svg>
  );
}

function Needed({ at }: Readonly<{ at: number }>) {
  const isLeft = at > 80;
  return (
    <>
      <line x1={percent(at)} x2={percent(at)} y1="6" y2="52" className={css['needed']} />
      <text
        x={percent(at)}
        dx={isLeft ? -6 : 6}
        y="15"
        textAnchor={isLeft ? 'end' : 'start'}
        className={css['needed-word']}
      >
        needed
      </text>
    </>
  );
}

/** The first of each month as a hair line; with `named` also its name. */
export function Months({
  scale,
  height,
  named = false,
}: Readonly<{ scale: Scale; height: number; named?: boolean }>) {
  return monthsOn(scale).map(({ day, name }) => {
    const at = percent(placeOf(scale, day));
    return (
      <g key={day}>
        <line x1={at} x2={at} y1="0" y2={height} className={css['month']} />
        {named ? (
          <text x={at} dx="4" y="14" className={css['month-name']}>
            {name}
          </text>
        ) : null}
      </g>
    );
  });
}

/** The line of months over the jobs; today is its left end. */
export function MonthLine({ scale }: Readonly<{ scale: Scale }>) {
  return (
    <svg className={css['line']} width="100%" height="20" aria-hidden="true">
      <Months scale={scale} height={20} named />
    </svg>
  );
}
