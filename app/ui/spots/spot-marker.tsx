'use client';

import { useState, type MouseEvent } from 'react';
import { Field } from '@/app/ui/form/field';
import { Picture } from '@/app/ui/piece/picture';
import type { PictureShown } from './picture-shown';
import css from './spots.module.css';

type SpotMarkerProps = Readonly<{
  picture: PictureShown;
  most: number;
  /** What to do, in one sentence; about wishes where nothing is said. */
  lead?: string | undefined;
}>;

const usualLead =
  'Choose a number, touch the picture where it is meant, and write what is wished there.';

type Spot = Readonly<{ x: number; y: number }>;

/**
 * A picture on which spots are marked with a touch, and a line of words for each. Without a touch or
 * a script the words stand alone: where it is, is said in them.
 */
export function SpotMarker({ picture, most, lead }: SpotMarkerProps) {
  const [spots, setSpots] = useState<readonly (Spot | null)[]>(
    Array.from({ length: most }, () => null),
  );
  const [chosen, setChosen] = useState(0);
  const mark = (touch: MouseEvent<HTMLDivElement>) => {
    const box = touch.currentTarget.getBoundingClientRect();
    const spot = {
      x: Math.round(((touch.clientX - box.left) / box.width) * 1000),
      y: Math.round(((touch.clientY - box.top) / box.height) * 1000),
    };
    setSpots((before) => before.map((each, at) => (at === chosen ? spot : each)));
  };
  return (
    <div className={css['figure']}>
      <div className={css['ground']} data-marking onClick={mark}>
        <Picture {...picture} first />
        {spots.map((spot, at) =>
          spot ? (
            <span
              key={at}
              className={css['spot']}
              style={{ left: `${spot.x / 10}%`, top: `${spot.y / 10}%` }}
            >
              {at + 1}
            </span>
          ) : null,
        )}
      </div>
      <p>{lead ?? usualLead}</p>
      <div className={css['rows']}>
        {spots.map((spot, at) => (
          <div key={at} className={css['row']}>
            <button
              type="button"
              className={css['choose']}
              aria-pressed={chosen === at}
              aria-label={`Mark spot ${at + 1}${spot ? ', marked' : ''}`}
              onClick={() => setChosen(at)}
            >
              {at + 1}
            </button>
            <Field
              name={`spotWords${at + 1}`}
              label={`At spot ${at + 1}`}
              optional
              maxLength={400}
            />
            <input type="hidden" name={`spotX${at + 1}`} value={spot ? String(spot.x) : ''} />
            <input type="hidden" name={`spotY${at + 1}`} value={spot ? String(spot.y) : ''} />
          </div>
        ))}
      </div>
    </div>
  );
}
