'use client';

import { Button } from '@/app/ui/button/button';
import type { DrawingAct, DrawingState, DrawnAround, Tool } from './drawing-state';
import type { useHand } from './use-hand';
import { wholeView } from './view';
import css from './draw.module.css';

type ToolsProps = Readonly<{
  state: DrawingState;
  act: (act: DrawingAct) => void;
  hand: ReturnType<typeof useHand>;
  around: DrawnAround;
}>;

const tools: readonly { tool: Tool; name: string }[] = [
  { tool: 'choose', name: 'Choose and move corners' },
  { tool: 'draw', name: 'Draw a part' },
  { tool: 'cut', name: 'Cut a part in two' },
];

/** What the next touch does, and what can be done with all of the drawing. */
export function Tools({ state, act, hand, around }: ToolsProps) {
  const last = state.begun.length > 0;
  return (
    <div className={css['tools']} role="group" aria-label="Tools">
      {tools.map(({ tool, name }) => (
        <button
          key={tool}
          type="button"
          className={css['tool']}
          aria-pressed={state.tool === tool}
          onClick={() => act({ do: 'take', tool })}
        >
          {name}
        </button>
      ))}
      <span className={css['tool-row']}>
        <Button
          variant="quiet"
          size="counter"
          disabled={state.past.length === 0}
          onClick={() => act({ do: 'back' })}
        >
          Undo
        </Button>
        <Button
          variant="quiet"
          size="counter"
          disabled={state.ahead.length === 0}
          onClick={() => act({ do: 'again' })}
        >
          Redo
        </Button>
        <Button variant="quiet" size="counter" aria-label="Nearer" onClick={() => hand.zoom(1.5)}>
          +
        </Button>
        <Button
          variant="quiet"
          size="counter"
          aria-label="Farther"
          onClick={() => hand.zoom(1 / 1.5)}
        >
          −
        </Button>
        <Button variant="quiet" size="counter" onClick={() => hand.setView(wholeView)}>
          All of it
        </Button>
      </span>
      {last ? (
        <span className={css['tool-row']}>
          {state.tool === 'draw' ? (
            <Button size="counter" onClick={() => act({ do: 'close', around })}>
              Close the part
            </Button>
          ) : null}
          <Button variant="quiet" size="counter" onClick={() => act({ do: 'drop' })}>
            Leave it
          </Button>
        </span>
      ) : null}
    </div>
  );
}

/** What the chosen tool waits for, in a sentence. */
export function toolSays({ tool, begun, chosen }: DrawingState): string {
  if (tool === 'draw') {
    if (begun.length === 0) return 'Touch where the first corner is.';
    return begun.length < 3
      ? 'Touch the next corner.'
      : 'Touch the next corner, or the first one to close the part.';
  }
  if (tool === 'cut') {
    if (chosen.length !== 1) return 'Touch the part to cut.';
    return begun.length === 0
      ? `Part ${chosen.join('')}: touch where the cut begins, at its edge or beside it.`
      : 'Touch where the cut ends, on the other side.';
  }
  return 'Touch a part to choose it; touch more of them with “several” on. Draw its corners where they belong.';
}
