'use client';

import { useState, type KeyboardEvent } from 'react';
import type { Corner } from '@/lib/studio/rules/parts/outline';
import type { DrawingAct, DrawingState, DrawnAround } from './drawing-state';

/** The cross that arrow keys move over the drawing, and what another key does where it stands. */
export function useCross(
  aspect: number,
  isDone: (event: KeyboardEvent, at: Corner) => boolean,
): { cross: Corner | null; onKeyDown: (event: KeyboardEvent) => void } {
  const [cross, setCross] = useState<Corner | null>(null);
  const at: Corner = cross ?? [500, 500];
  const onKeyDown = (event: KeyboardEvent) => {
    const way = ways[event.key];
    if (way) {
      const step = event.shiftKey ? 50 : 10;
      setCross([clamped(at[0] + way[0] * step), clamped(at[1] + (way[1] * step) / aspect)]);
    }
    if (way || isDone(event, at)) event.preventDefault();
  };
  return { cross, onKeyDown };
}

function clamped(value: number): number {
  return Math.min(1000, Math.max(0, value));
}

const ways: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

type Pressed = {
  state: DrawingState;
  act: (act: DrawingAct) => void;
  around: DrawnAround;
  zoom: (by: number) => void;
  tap: () => void;
  twice: () => void;
};

/** Does what a key stands for; false when it stands for nothing here. */
export function isKeyDone(event: KeyboardEvent, pressed: Pressed): boolean {
  const { state, act, around, zoom, tap, twice } = pressed;
  const isCommand = event.ctrlKey || event.metaKey;
  const acts: Readonly<Record<string, () => void>> = {
    ' ': tap,
    Enter: () => (state.begun.length >= 3 ? act({ do: 'close', around }) : tap()),
    Escape: () => act({ do: 'drop' }),
    Delete: () => state.chosen.length > 0 && act({ do: 'take_away' }),
    '+': () => zoom(1.4),
    '-': () => zoom(1 / 1.4),
    x: twice,
  };
  const key = event.key.toLowerCase();
  if (isCommand && (key === 'z' || key === 'y')) {
    act({ do: key === 'y' || event.shiftKey ? 'again' : 'back' });
    return true;
  }
  const done = isCommand ? undefined : acts[event.key];
  done?.();
  return done !== undefined;
}
