'use client';

import { classes } from '@/app/ui/classes';
import { labelSpot } from '@/lib/studio/rules/parts/label';
import { isSame, type Corner, type Outline, type Shape } from '@/lib/studio/rules/parts/outline';
import { memo } from 'react';
import { drawnWidth, pathOf, tenths } from '../outline-path';
import { cornersOf, type useHand } from './use-hand';
import type { DrawingState } from './drawing-state';
import { boxOfView } from './view';
import css from './draw.module.css';

type CanvasProps = Readonly<{
  state: DrawingState;
  hand: ReturnType<typeof useHand>;
  aspect: number;
  /** The sketch that lies under it. */
  over: string | null;
  helpId: string;
}>;

/** The drawing itself: the sketch, the parts with their numbers, the corners, what is being drawn. */
export function Canvas({ state, hand, aspect, over, helpId }: CanvasProps) {
  const box = boxOfView(hand.view, aspect);
  const dot = 7 / hand.view.near;
  const { onItsWay } = hand;
  const chosen = new Set(state.chosen);
  return (
    <svg
      className={css['canvas']}
      data-tool={state.tool}
      viewBox={`${tenths(box.x)} ${tenths(box.y)} ${tenths(box.width)} ${tenths(box.height)}`}
      style={{ aspectRatio: `${tenths(box.width)} / ${tenths(box.height)}` }}
      role="application"
      aria-label={`The drawing, ${state.shapes.length} parts`}
      aria-describedby={helpId}
      tabIndex={0}
      onKeyDown={hand.onKeyDown}
      onWheel={hand.onWheel}
      onDoubleClick={hand.onDoubleClick}
      {...hand.touch}
    >
      <rect width={drawnWidth} height={drawnWidth * aspect} className={css['ground']} />
      {over ? (
        <image
          href={over}
          width={drawnWidth}
          height={drawnWidth * aspect}
          preserveAspectRatio="none"
          opacity={0.75}
        />
      ) : null}
      {state.shapes.map((shape) => (
        <PartDrawn
          key={shape.number}
          shape={onItsWay ? shapeOnItsWay(shape, onItsWay) : shape}
          aspect={aspect}
          isChosen={chosen.has(shape.number)}
        />
      ))}
      {state.tool === 'choose'
        ? cornersOf(state).map((corner) => (
            <circle
              key={corner.join(' ')}
              cx={corner[0]}
              cy={corner[1] * aspect}
              r={dot}
              className={css['corner']}
            />
          ))
        : null}
      <Begun corners={state.begun} aspect={aspect} dot={dot} />
      {hand.cross ? <Cross at={hand.cross} aspect={aspect} size={20 / hand.view.near} /> : null}
    </svg>
  );
}

type PartDrawnProps = Readonly<{ shape: Shape; aspect: number; isChosen: boolean }>;

const PartDrawn = memo(function PartDrawn({ shape, aspect, isChosen }: PartDrawnProps) {
  const { at, room } = labelSpot(shape.outline, aspect);
  const size = Math.min(34, Math.max(9, room * 0.9));
  return (
    <g className={classes(css['part'], isChosen && css['chosen'])}>
      <path d={pathOf(shape.outline, aspect)} />
      <text x={tenths(at[0])} y={tenths(at[1] * aspect)} fontSize={tenths(size)}>
        {shape.number}
        {shape.hasSpare ? '+' : ''}
      </text>
    </g>
  );
});

function shapeOnItsWay(shape: Shape, { from, to }: { from: Corner; to: Corner }): Shape {
  if (!shape.outline.some((corner) => isSame(corner, from))) return shape;
  return { ...shape, outline: shape.outline.map((each) => (isSame(each, from) ? to : each)) };
}

type BegunProps = Readonly<{ corners: Outline; aspect: number; dot: number }>;

/** Corners that were put so far; the first is larger, because a touch on it closes the part. */
function Begun({ corners, aspect, dot }: BegunProps) {
  if (corners.length === 0) return null;
  return (
    <g className={css['begun']}>
      <polyline points={corners.map(([x, y]) => `${x},${tenths(y * aspect)}`).join(' ')} />
      {corners.map(([x, y], at) => (
        <circle key={`${x} ${y}`} cx={x} cy={y * aspect} r={at === 0 ? dot * 1.7 : dot} />
      ))}
    </g>
  );
}

type CrossProps = Readonly<{ at: Corner; aspect: number; size: number }>;

/** Where the keys are. */
function Cross({ at, aspect, size }: CrossProps) {
  const [x, y] = [at[0], at[1] * aspect];
  return (
    <path
      className={css['cross']}
      d={`M${x - size} ${y}H${x + size}M${x} ${y - size}V${y + size}`}
      aria-hidden="true"
    />
  );
}
