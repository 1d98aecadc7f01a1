'use client';

import { memo, useEffect, useRef } from 'react';
import { classes } from '@/app/ui/classes';
import { labelSpot } from '@/lib/studio/rules/parts/label';
import { isSame, type Corner, type Outline, type Shape } from '@/lib/studio/rules/parts/outline';
import { drawnWidth, pathOf, tenths } from '../outline-path';
import { cornersOf, type useHand } from './use-hand';
import type { DrawingState } from './drawing-state';
import { spotsOf } from './use-touch';
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
  const { onItsWay } = hand;
  const chosen = new Set(state.chosen);
  const picture = useRef<SVGSVGElement>(null);
  useEffect(() => listenToWheel(picture.current, hand.pinch));
  const count = state.shapes.length;
  return (
    <svg
      ref={picture}
      className={css['canvas']}
      data-tool={state.tool}
      viewBox={`${tenths(box.x)} ${tenths(box.y)} ${tenths(box.width)} ${tenths(box.height)}`}
      style={{ aspectRatio: `${tenths(box.width)} / ${tenths(box.height)}` }}
      role="application"
      aria-label={`The drawing, ${count === 1 ? '1 part' : `${count} parts`}`}
      aria-describedby={helpId}
      tabIndex={0}
      onKeyDown={hand.onKeyDown}
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
            <Dot key={corner.join(' ')} at={corner} aspect={aspect} />
          ))
        : null}
      <Begun corners={state.begun} aspect={aspect} />
      {hand.cross ? <Cross at={hand.cross} aspect={aspect} size={20 / hand.view.near} /> : null}
    </svg>
  );
}

/** With Ctrl held, or two fingers on a pad, the wheel zooms; without, the page scrolls as ever. */
function listenToWheel(
  picture: SVGSVGElement | null,
  pinch: ReturnType<typeof useHand>['pinch'],
): () => void {
  const turn = (event: WheelEvent) => {
    if (!event.ctrlKey || !picture) return;
    event.preventDefault();
    const spot = spotsOf(picture)(event.clientX, event.clientY);
    pinch(event.deltaY < 0 ? 1.15 : 1 / 1.15, spot);
  };
  picture?.addEventListener('wheel', turn, { passive: false });
  return () => picture?.removeEventListener('wheel', turn);
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

type BegunProps = Readonly<{ corners: Outline; aspect: number }>;

/** Corners that were put so far; the first is larger, because a touch on it closes the part. */
function Begun({ corners, aspect }: BegunProps) {
  if (corners.length === 0) return null;
  return (
    <g className={css['begun']}>
      <polyline points={corners.map(([x, y]) => `${x},${tenths(y * aspect)}`).join(' ')} />
      {corners.map((corner, at) => (
        <Dot key={corner.join(' ')} at={corner} aspect={aspect} isFirst={at === 0} />
      ))}
    </g>
  );
}

type DotProps = Readonly<{ at: Corner; aspect: number; isFirst?: boolean }>;

/** A corner, as large on the screen however near one looks: strokes of no length do not scale. */
function Dot({ at, aspect, isFirst }: DotProps) {
  const spot = `M${at[0]} ${tenths(at[1] * aspect)}h0`;
  return (
    <g className={css['dot']} data-first={isFirst || undefined}>
      <path d={spot} />
      <path d={spot} />
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
