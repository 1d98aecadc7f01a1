'use client';

import { useEffect, useId, useReducer, useState } from 'react';
import { Button } from '@/app/ui/button/button';
import { Notice } from '@/app/ui/page/notice';
import type { DrawnOver } from '@/lib/studio/reads/parts/drawing';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import type { ReliefSize } from '@/lib/studio/rules/parts/sizes';
import { BeginGrid } from './begin-grid';
import type { BoardProps } from './board-props';
import { Canvas } from './canvas';
import { ChosenPart } from './chosen-part';
import { drawn, opened, type DrawingAct } from './drawing-state';
import { SaveDrawing } from './save-drawing';
import { Tools, toolSays } from './tools';
import { useHand } from './use-hand';
import { readKept, useKeptHere } from './use-kept-here';
import css from './draw.module.css';

/** The board on which a relief is cut into numbered parts, by finger, pen, mouse or keys. */
export function DrawingBoard(props: BoardProps) {
  const helpId = useId();
  const [state, dispatch] = useReducer(drawn, props.shapes, opened);
  const [base, setBase] = useState(props.version);
  const [isAnswered, setIsAnswered] = useState(false);
  const [several, setSeveral] = useState(false);
  const [size, setSize] = useState(props.size);
  const { text, keep } = useKeptHere(props.jobId);
  const around = { areas: props.over?.areas ?? [], aspect: aspectOf(size, props.over) };
  const act = (one: DrawingAct) => {
    setIsAnswered(true);
    const isMany = several && state.tool === 'choose';
    dispatch(one.do === 'choose' && isMany ? { ...one, isMore: one.number !== null } : one);
  };
  const hand = useHand(state, act, around);
  const { shapes } = state;
  useEffect(() => {
    if (isAnswered) keep({ version: base, shapes });
  }, [isAnswered, keep, base, shapes]);

  const kept = isAnswered ? null : readKept(text);
  if (kept && !isTheSame(kept.shapes, props.shapes)) {
    const goOn = () => {
      setIsAnswered(true);
      setBase(kept.version);
      dispatch({ do: 'put', shapes: kept.shapes });
    };
    return <KeptNotice goOn={goOn} leave={() => (keep(null), setIsAnswered(true))} />;
  }
  const takeTheirs = () => {
    dispatch({ do: 'put', shapes: props.shapes });
    setBase(props.version);
  };
  return (
    <div className={css['board']}>
      <div className={css['drawing']}>
        <Tools {...{ state, act, hand, around }} />
        <p role="status" className={css['says']} data-refused={state.said !== '' || undefined}>
          {state.said || toolSays(state)}
        </p>
        <Canvas
          {...{ state, hand, helpId, aspect: around.aspect }}
          over={props.over && `/files/${props.over.fileId}`}
        />
        <p id={helpId} className={css['quiet']}>
          Touch an edge twice for a new corner, a corner twice to take it away. Keys: arrows move
          the cross, space or Enter touches there, x touches twice, Enter closes a part, Escape
          leaves it, Delete takes away what is chosen, Ctrl Z takes back, + and − zoom.
        </p>
      </div>
      <div className={css['beside']}>
        <label className={css['tick']}>
          <input
            type="checkbox"
            checked={several}
            onChange={(event) => setSeveral(event.target.checked)}
          />
          Choose several
        </label>
        <ChosenPart
          {...{ state, act, size }}
          areaNames={areaNamesOf(shapes, props.over)}
          shrinkagePercent={props.shrinkagePercent}
          lengthUnit={props.lengthUnit}
        />
        <AllOfThem act={act} aspect={around.aspect} count={shapes.length} />
        <BeginGrid act={act} around={around} hasParts={shapes.length > 0} />
        <SaveDrawing {...props} {...{ shapes, base, setSize, takeTheirs }} />
      </div>
    </div>
  );
}

type AllOfThemProps = Readonly<{
  act: (act: DrawingAct) => void;
  aspect: number;
  count: number;
}>;

function AllOfThem({ act, aspect, count }: AllOfThemProps) {
  if (count === 0) return null;
  return (
    <div className={css['tool-row']}>
      <Button variant="quiet" size="counter" onClick={() => act({ do: 'number_anew' })}>
        Number them anew
      </Button>
      <Button variant="quiet" size="counter" onClick={() => act({ do: 'spares', aspect })}>
        A spare for one in ten
      </Button>
    </div>
  );
}

function KeptNotice({ goOn, leave }: Readonly<{ goOn: () => void; leave: () => void }>) {
  return (
    <Notice kind="caution" title="A drawing is on this device that was not saved">
      <span className={css['tool-row']}>
        <Button size="counter" onClick={goOn}>
          Go on with it
        </Button>
        <Button variant="quiet" size="counter" onClick={leave}>
          Begin from what is saved
        </Button>
      </span>
    </Notice>
  );
}

function isTheSame(one: readonly Shape[], other: readonly Shape[]): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function aspectOf(size: ReliefSize | null, over: DrawnOver | null): number {
  if (size) return size.heightUm / size.widthUm;
  return over?.widthPx && over.heightPx ? over.heightPx / over.widthPx : 0.75;
}

function areaNamesOf(shapes: readonly Shape[], over: DrawnOver | null): string[] {
  const names = [...(over?.areas ?? []).map(({ name }) => name), ...shapes.map(({ area }) => area)];
  return [...new Set(names.filter((name) => name !== ''))];
}
