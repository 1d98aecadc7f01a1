import type { Measure, Shape, WallDrawing } from '@/lib/walls/rules/drawing/drawing';
import css from './plan.module.css';

type PlanDrawingProps = Readonly<{ drawing: WallDrawing }>;

/** Micrometres to a unit of the drawing: a millimetre. */
const perUnit = 1_000;
/** How far out the first measurement stands, and each one further, in units. */
const [firstOut, eachOut] = [110, 130];
/** Room at the left and below for the measurements, above and right for the lines. */
const room = { left: 740, below: 520, above: 60, right: 60 };

/** A wall with its piece, drawn to scale: a millimetre of the wall is a unit of the drawing. */
export function PlanDrawing({ drawing }: PlanDrawingProps) {
  const width = drawing.widthUm / perUnit;
  const height = drawing.heightUm / perUnit;
  const { left, below, above, right } = room;
  return (
    <div className={css['frame']} tabIndex={0} role="group" aria-label="The drawing">
      <svg
        className={css['drawing']}
        viewBox={`${-left} ${-above} ${width + left + right} ${height + above + below}`}
        role="img"
        aria-label={drawing.label}
      >
        {drawing.shapes.map((shape, at) => (
          <ShapeOn key={at} shape={shape} high={height} />
        ))}
        <line className={css['floor']} x1={-60} y1={height} x2={width + 60} y2={height} />
        {drawing.measures.map((measure, at) => (
          <MeasureOn key={at} measure={measure} high={height} />
        ))}
      </svg>
    </div>
  );
}

function ShapeOn({ shape, high }: Readonly<{ shape: Shape; high: number }>) {
  const { role, name, leftUm, bottomUm, widthUm, heightUm } = shape;
  const [x, width, tall] = [leftUm, widthUm, heightUm].map((um) => um / perUnit);
  const y = high - (bottomUm + heightUm) / perUnit;
  if (role === 'hole') {
    return (
      <circle
        className={css['hole']}
        cx={(x ?? 0) + (width ?? 0) / 2}
        cy={y + (tall ?? 0) / 2}
        r={(width ?? 0) / 2}
      />
    );
  }
  return (
    <g>
      <rect className={css[role]} x={x} y={y} width={width} height={tall}>
        <title>{name}</title>
      </rect>
      {role === 'obstacle' || role === 'inTheWall' || role === 'furniture' ? (
        <text className={css['name']} x={(x ?? 0) + 12} y={y + 52}>
          {name}
        </text>
      ) : null}
    </g>
  );
}

function MeasureOn({ measure, high }: Readonly<{ measure: Measure; high: number }>) {
  const { along, fromUm, untilUm, rank, words } = measure;
  const [from, until] = [fromUm / perUnit, untilUm / perUnit];
  const out = firstOut + rank * eachOut;
  if (along === 'wall') {
    return (
      <g className={css['measure']}>
        <Line x1={from} y1={high + out} x2={until} y2={high + out} />
        <Line x1={from} y1={high + out - 22} x2={from} y2={high + out + 22} />
        <Line x1={until} y1={high + out - 22} x2={until} y2={high + out + 22} />
        <text x={(from + until) / 2} y={high + out - 16} textAnchor="middle">
          {words}
        </text>
      </g>
    );
  }
  const middle = high - (from + until) / 2;
  return (
    <g className={css['measure']}>
      <Line x1={-out} y1={high - from} x2={-out} y2={high - until} />
      <Line x1={-out - 22} y1={high - from} x2={-out + 22} y2={high - from} />
      <Line x1={-out - 22} y1={high - until} x2={-out + 22} y2={high - until} />
      <text
        x={-out - 16}
        y={middle}
        textAnchor="middle"
        transform={`rotate(-90 ${-out - 16} ${middle})`}
      >
        {words}
      </text>
    </g>
  );
}

function Line(ends: Readonly<{ x1: number; y1: number; x2: number; y2: number }>) {
  return <line {...ends} />;
}
