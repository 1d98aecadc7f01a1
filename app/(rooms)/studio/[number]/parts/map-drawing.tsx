import type { MouseEvent } from 'react';
import { classes } from '@/app/ui/classes';
import type { DrawnShape } from './drawn-shapes';
import { drawnWidth, tenths } from './outline-path';
import { PartPatterns } from './part-patterns';
import css from './parts.module.css';

type MapDrawingProps = Readonly<{
  shapes: readonly DrawnShape[];
  aspect: number;
  label: string;
  chosen?: ReadonlySet<number> | undefined;
  /** Where a touch on a part leads; none for a picture alone. */
  hrefOf?: ((number: number) => string) | undefined;
  onTouch?: ((number: number, event: MouseEvent) => void) | undefined;
  /** Without numbers, for a small picture. */
  isSmall?: boolean | undefined;
}>;

/** The numbered drawing, each part in the colour and the pattern of where it stands. */
export function MapDrawing(props: MapDrawingProps) {
  const { shapes, aspect, label, hrefOf } = props;
  const height = tenths(drawnWidth * aspect);
  return (
    <svg
      className={classes(css['map'], props.isSmall && css['small'])}
      viewBox={`-6 -6 ${drawnWidth + 12} ${height + 12}`}
      role={hrefOf ? 'group' : 'img'}
      aria-label={label}
    >
      <PartPatterns />
      {shapes.map((shape) =>
        hrefOf ? (
          <a
            key={shape.number}
            href={hrefOf(shape.number)}
            aria-label={shape.words}
            aria-current={props.chosen?.has(shape.number) || undefined}
            onClick={props.onTouch && ((event) => props.onTouch?.(shape.number, event))}
          >
            <PartOnMap shape={shape} {...props} />
          </a>
        ) : (
          <PartOnMap key={shape.number} shape={shape} {...props} />
        ),
      )}
    </svg>
  );
}

function PartOnMap({ shape, chosen, isSmall }: MapDrawingProps & Readonly<{ shape: DrawnShape }>) {
  const { number, path, at, state } = shape;
  return (
    <g
      className={css['part']}
      data-state={state}
      data-chosen={chosen?.has(number) || undefined}
      data-anew={shape.isAnew || undefined}
    >
      <path d={path} className={css['face']} />
      <path d={path} className={css['pattern']} />
      {isSmall ? null : (
        <text x={at.x} y={at.y} fontSize={at.size}>
          {number}
          {signOf(shape)}
        </text>
      )}
    </g>
  );
}

/** What a number carries besides: made anew, in the fire, lost. */
function signOf({ isAnew, isInKiln, state }: DrawnShape): string {
  if (state === 'lost') return ' ✕';
  return `${isAnew ? ' ↻' : ''}${isInKiln ? ' ▲' : ''}`;
}
