'use client';

import { useState } from 'react';
import type { LengthSystem } from '@/lib/units/rules';
import type { SetTile, TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import type { TileAxis } from '@/lib/walls/rules/tiles/axis';
import { layTiles, type TileLayout } from '@/lib/walls/rules/tiles/layout';
import { tileRefusalMessage } from '@/lib/walls/rules/tiles/refusals';
import { readWall, typedAtFirst, typedIn, type Faults, type WallTyped } from './wall-typed';

/** A set tile that is put wherever the wall is touched. */
export type Brush = Readonly<{ name: string; across: number; down: number }>;

/** The board: what is typed, what is laid out of it, and what can be done to it. */
export type TileWallBoard = Readonly<{
  typed: WallTyped;
  faults: Faults;
  sets: readonly SetTile[];
  chosen: number | null;
  brush: Brush;
  /** Null while something is wrong; then the drawing shows the wall as far as it goes. */
  asked: TileWallAsked | null;
  drawn: { asked: TileWallAsked; layout: TileLayout } | null;
  /** What is wrong, or what was refused just now; empty when nothing is. */
  said: string;
  type: (form: HTMLFormElement) => void;
  addOpening: () => void;
  dropOpening: (id: number) => void;
  setBrush: (brush: Brush) => void;
  touch: (leftUm: number, bottomUm: number) => void;
  put: (column: number, row: number) => void;
  takeAway: () => void;
  takeAllAway: () => void;
}>;

/** Keeps a wall of tiles while it is laid out. */
export function useTileWall(kept: TileWallAsked | null, system: LengthSystem): TileWallBoard {
  const [typed, setTyped] = useState(() => typedAtFirst(kept, system));
  // The last that could be read: the drawing stays while a measure is being typed.
  const [readable, setReadable] = useState(typed);
  const [sets, setSets] = useState<readonly SetTile[]>(kept?.sets ?? []);
  const [chosen, setChosen] = useState<number | null>(null);
  const [brush, setBrush] = useState<Brush>({ name: 'Relief', across: 1, down: 1 });
  const [refused, setRefused] = useState('');
  const { asked, faults } = readWall(typed, sets, system);
  const { drawn, fault } = drawnOf(readWall(readable, sets, system).asked);
  const said = asked ? fault : 'Look at what is marked: it does not read yet.';

  const retype = (next: WallTyped) => {
    setRefused('');
    setTyped(next);
    if (readWall(next, sets, system).asked) setReadable(next);
  };

  const change = (next: readonly SetTile[], choose: number | null) => {
    const answer = asked && layTiles({ ...asked, sets: next });
    const refusal = answer && !answer.ok ? tileRefusalMessage(answer.refusal) : '';
    setRefused(refusal);
    if (refusal !== '') return;
    setSets(next);
    setChosen(choose);
  };
  const put = (column: number, row: number) => {
    change(withSet(sets, chosen, { ...brush, column, row }), null);
  };
  const touch = (leftUm: number, bottomUm: number) => {
    if (!drawn) return;
    const column = stripAt(drawn.layout.columns, leftUm);
    const row = stripAt(drawn.layout.rows, bottomUm);
    if (column === null || row === null) return;
    const there = sets.findIndex((set) => isIn(set, column, row));
    setRefused('');
    if (there >= 0) setChosen(there === chosen ? null : there);
    else put(column, row);
  };
  return {
    ...{ typed, faults, sets, chosen, brush, drawn, put, touch, setBrush },
    asked: said === '' ? asked : null,
    said: refused || said,
    type: (form) => retype(typedIn(new FormData(form), typed)),
    addOpening: () => retype(withOpening(typed)),
    dropOpening: (id) =>
      retype({ ...typed, openings: typed.openings.filter((one) => one.id !== id) }),
    takeAway: () =>
      change(
        sets.filter((_set, at) => at !== chosen),
        null,
      ),
    takeAllAway: () => {
      setRefused('');
      setSets([]);
      setChosen(null);
    },
  };
}

/** The set tiles with one more, or with the chosen one moved there. */
function withSet(sets: readonly SetTile[], chosen: number | null, put: SetTile): SetTile[] {
  const { column, row } = put;
  if (chosen === null) return [...sets, { ...put, name: put.name.trim() || 'Relief' }];
  return sets.map((set, at) => (at === chosen ? { ...set, column, row } : set));
}

/** The wall as it is drawn: whole, or without what does not fit, and then why. */
function drawnOf(asked: TileWallAsked | null): {
  drawn: TileWallBoard['drawn'];
  fault: string;
} {
  if (!asked) return { drawn: null, fault: '' };
  const answer = layTiles(asked);
  if (answer.ok) return { drawn: { asked, layout: answer.value }, fault: '' };
  const fault = tileRefusalMessage(answer.refusal);
  const bare = { ...asked, sets: [], openings: [] };
  const field = layTiles(bare);
  return { drawn: field.ok ? { asked: bare, layout: field.value } : null, fault };
}

function withOpening(typed: WallTyped): WallTyped {
  const id = Math.max(-1, ...typed.openings.map((one) => one.id)) + 1;
  const one = { id, kind: 'outlet', left: '', bottom: '', width: '', height: '' } as const;
  return { ...typed, openings: [...typed.openings, one] };
}

/** Which strip lies at a place; a joint belongs to the strip before it. */
function stripAt(axis: TileAxis, um: number): number | null {
  const at = axis.strips.findLastIndex(({ fromUm }) => fromUm <= um);
  return at < 0 ? null : at;
}

function isIn(set: SetTile, column: number, row: number): boolean {
  const [right, up] = [column - set.column, row - set.row];
  return right >= 0 && right < set.across && up >= 0 && up < set.down;
}
