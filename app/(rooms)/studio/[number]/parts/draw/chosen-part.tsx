'use client';

import { useId } from 'react';
import { Button } from '@/app/ui/button/button';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import { areaWords, partSize, type ReliefSize } from '@/lib/studio/rules/parts/sizes';
import { numbersWords } from '@/lib/studio/rules/parts/words';
import type { DrawingAct, DrawingState } from './drawing-state';
import css from './draw.module.css';

type ChosenPartProps = Readonly<{
  state: DrawingState;
  act: (act: DrawingAct) => void;
  areaNames: readonly string[];
  /** Null while its size is not written. */
  size: ReliefSize | null;
  shrinkagePercent: string | null;
  lengthUnit: LengthSystem;
}>;

/** The part or parts that are chosen: how large, which colour area, a spare, and what can be done. */
export function ChosenPart(props: ChosenPartProps) {
  const { state, act, areaNames } = props;
  const id = useId();
  const chosen = state.shapes.filter(({ number }) => state.chosen.includes(number));
  const [first] = chosen;
  if (!first) return <p className={css['quiet']}>No part is chosen.</p>;
  const isOne = chosen.length === 1;
  const describe = (change: Partial<Shape>) => act({ do: 'describe', change });
  return (
    <div className={css['chosen-part']}>
      <h3>{isOne ? `Part ${first.number}` : `Parts ${numbersWords(state.chosen)}`}</h3>
      {isOne ? <HowLarge shape={first} {...props} /> : null}
      <label htmlFor={`${id}-area`}>Colour area</label>
      <input
        id={`${id}-area`}
        className={css['typed']}
        list={`${id}-areas`}
        maxLength={80}
        value={first.area}
        onChange={(event) => describe({ area: event.target.value })}
      />
      <datalist id={`${id}-areas`}>
        {areaNames.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      {isOne ? (
        <>
          <label htmlFor={`${id}-note`}>What to mind with it</label>
          <input
            id={`${id}-note`}
            className={css['typed']}
            maxLength={400}
            value={first.note}
            onChange={(event) => describe({ note: event.target.value })}
          />
        </>
      ) : null}
      <label className={css['tick']}>
        <input
          type="checkbox"
          checked={chosen.every(({ hasSpare }) => hasSpare)}
          onChange={(event) => describe({ hasSpare: event.target.checked })}
        />
        Make a spare from the start
      </label>
      <div className={css['tool-row']}>
        <Button
          variant="quiet"
          size="counter"
          disabled={chosen.length !== 2}
          onClick={() => act({ do: 'make_one' })}
        >
          Make the two one
        </Button>
        <Button variant="danger" size="counter" onClick={() => act({ do: 'take_away' })}>
          {isOne ? 'Take it away' : 'Take them away'}
        </Button>
      </div>
    </div>
  );
}

function HowLarge(props: ChosenPartProps & Readonly<{ shape: Shape }>) {
  const { shape, size, shrinkagePercent, lengthUnit } = props;
  if (!size) return <p className={css['quiet']}>Write how large the relief is below.</p>;
  const part = partSize(shape.outline, size, shrinkagePercent);
  return (
    <p>
      Fired {formatSize(part, lengthUnit)}, {areaWords(part.areaMm2, lengthUnit)}.{' '}
      {part.wet
        ? `Wet ${formatSize(part.wet, lengthUnit)}.`
        : 'Nobody has measured what its clay shrinks.'}
    </p>
  );
}
