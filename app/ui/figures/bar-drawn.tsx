import { useId } from 'react';
import type { PictureShown } from '@/app/ui/piece/picture';
import css from './bars.module.css';

/** One bar. `value` only sets its height; what is read is `text`. */
export type Bar = Readonly<{
  key: string;
  name: string;
  value: number;
  text: string;
  picture?: PictureShown | null | undefined;
  href?: string | undefined;
  /** A second look beside the colour, such as dots for what made a loss. */
  pattern?: 'plain' | 'lines' | 'dots' | undefined;
}>;

type BarDrawnProps = Readonly<{ bar: Bar; most: number; least: number }>;

const wide = 112;
const room = 190;
const words = 22;

/** One bar drawn on the scale all bars share; its figure stands at its end. */
export function BarDrawn({ bar, most, least }: BarDrawnProps) {
  const pattern = useId();
  const span = most - least || 1;
  const high = Math.round((Math.abs(bar.value) / span) * room);
  const zero = words + Math.round((most / span) * room);
  const top = bar.value < 0 ? zero : zero - high;
  const textAt = bar.value < 0 ? zero + high + 16 : top - 7;
  const tall = room + words + (least < 0 ? words : 2);
  return (
    <svg width={wide} height={tall} viewBox={`0 0 ${wide} ${tall}`} aria-hidden="true">
      <defs>
        <pattern
          id={pattern}
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform={bar.pattern === 'lines' ? 'rotate(45)' : undefined}
        >
          {bar.pattern === 'dots' ? (
            <circle cx="3" cy="3" r="1.4" className={css['over']} />
          ) : (
            <rect width="2" height="6" className={css['over']} />
          )}
        </pattern>
      </defs>
      <rect
        x="10"
        y={top}
        width={wide - 34}
        height={Math.max(high, 1)}
        className={bar.value < 0 ? css['below'] : css['above']}
      />
      {bar.pattern === 'lines' || bar.pattern === 'dots' ? (
        <rect x="10" y={top} width={wide - 34} height={high} fill={`url(#${pattern})`} />
      ) : null}
      <line x1="0" x2={wide} y1={zero} y2={zero} className={css['zero']} />
      <text x="10" y={textAt} className={css['text']}>
        {bar.text}
      </text>
    </svg>
  );
}
