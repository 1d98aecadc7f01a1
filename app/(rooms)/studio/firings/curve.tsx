import { Table } from '@/app/ui/figures/table';
import { formatInstant } from '@/lib/dates/rules';
import type { FiringTold } from '@/lib/studio/reads/firings/firing';
import { askedAtC, curveOf, type CurvePoint } from '@/lib/studio/rules/firings/curve';
import { degreesWords, type Scale } from '@/lib/studio/rules/kilns/degrees';
import { minutesWords } from '@/lib/studio/rules/kilns/firing';
import css from './firings.module.css';

type CurveProps = Readonly<{ firing: FiringTold; scale: Scale; zone: string }>;

const [wide, high, foot] = [720, 300, 34];

/** How a firing is to go, and how it went: a picture, and the same as a table. */
export function Curve({ firing, scale, zone }: CurveProps) {
  const asked = curveOf(firing.schedule);
  const was = pointsRead(firing);
  const lastMinutes = Math.max(...[...asked, ...was].map((point) => point.afterMinutes), 60);
  const peakC = Math.max(...[...asked, ...was].map((point) => point.celsius));
  const x = (minutes: number): number => Math.round((minutes / lastMinutes) * (wide - 20)) + 10;
  const y = (celsius: number): number =>
    Math.round(high - foot - (celsius / (peakC * 1.12)) * (high - foot - 10));
  const line = (points: readonly CurvePoint[]): string =>
    points.map((point) => `${x(point.afterMinutes)},${y(point.celsius)}`).join(' ');
  const hottest = asked.find((point) => point.celsius === Math.max(...asked.map((p) => p.celsius)));
  return (
    <>
      <svg
        viewBox={`0 0 ${wide} ${high}`}
        className={css['curve']}
        role="img"
        aria-label={curveSaid(firing, asked, scale)}
      >
        <line className={css['axis']} x1={10} y1={high - foot} x2={wide - 10} y2={high - foot} />
        {hourMarks(lastMinutes).map((hours) => (
          <text key={hours} className={css['mark']} x={x(hours * 60)} y={high - 12}>
            {hours} h
          </text>
        ))}
        <polyline className={css['asked']} points={line(asked)} />
        {was.length > 1 ? <polyline className={css['was']} points={line(was)} /> : null}
        {was.map((point) => (
          <circle
            key={`${point.afterMinutes} ${point.celsius}`}
            className={css['dot']}
            cx={x(point.afterMinutes)}
            cy={y(point.celsius)}
            r={5}
          />
        ))}
        {hottest ? (
          <text
            className={css['mark']}
            x={Math.min(x(hottest.afterMinutes), wide - 10)}
            textAnchor={x(hottest.afterMinutes) > wide / 3 ? 'end' : 'start'}
            y={y(hottest.celsius) - 8}
          >
            asked: {degreesWords(hottest.celsius, scale)}
          </text>
        ) : null}
      </svg>
      {was.length > 0 ? <ReadingsTable firing={firing} scale={scale} zone={zone} /> : null}
    </>
  );
}

function pointsRead({ lit, readings }: FiringTold): CurvePoint[] {
  if (!lit) return [];
  return readings.map(({ at, celsius }) => ({ celsius, afterMinutes: minutesAfter(lit.at, at) }));
}

function minutesAfter(from: Date, to: Date): number {
  return Math.round((to.getTime() - from.getTime()) / 60_000);
}

/** Hours to write at the foot, at most nine of them. */
function hourMarks(lastMinutes: number): number[] {
  const hours = Math.floor(lastMinutes / 60);
  const step = Math.max(1, Math.ceil(hours / 8));
  return Array.from({ length: Math.floor(hours / step) + 1 }, (_, at) => at * step).filter(
    (hour) => hour * 60 <= lastMinutes * 0.97,
  );
}

function curveSaid(firing: FiringTold, asked: readonly CurvePoint[], scale: Scale): string {
  const peakC = Math.max(...asked.map((point) => point.celsius));
  const minutes = asked.at(-1)?.afterMinutes ?? 0;
  const read = firing.readings.length;
  const readings = read === 0 ? '' : `, and ${read === 1 ? '1 reading' : `${read} readings`}`;
  return `The schedule: to ${degreesWords(peakC, scale)} in ${minutesWords(minutes)}${readings}`;
}

function ReadingsTable({ firing, scale, zone }: CurveProps) {
  const { lit, readings, schedule } = firing;
  if (!lit) return null;
  const asked = curveOf(schedule);
  return (
    <Table
      caption="What it read"
      columns={[
        { name: 'When' },
        { name: 'After', figure: true, wideOnly: true },
        { name: 'Read', figure: true },
        { name: 'Asked', figure: true },
        { name: 'Note' },
      ]}
      rows={readings.map((reading) => {
        const minutes = minutesAfter(lit.at, reading.at);
        const askedC = askedAtC(asked, minutes);
        return {
          key: reading.id,
          cells: [
            formatInstant(reading.at, zone),
            minutesWords(minutes),
            degreesWords(reading.celsius, scale),
            askedC === null ? 'cooling' : degreesWords(askedC, scale),
            [reading.note, reading.by].filter((words) => words !== '').join(', '),
          ],
        };
      })}
    />
  );
}
