'use client';

import { useState, type MouseEvent, type PointerEvent } from 'react';
import { farBetween, landsOn } from '@/lib/studio/rules/parts/corners';
import {
  isInside,
  isSame,
  keptCorner,
  type Corner,
  type Shape,
} from '@/lib/studio/rules/parts/outline';
import { drawnWidth } from '../outline-path';
import type { DrawingAct, DrawingState, DrawnAround } from './drawing-state';
import { isKeyDone, useCross } from './use-cross';
import { spotsOf, useTouch, type Spot } from './use-touch';
import { nearer, shifted, wholeView, type View } from './view';

/** How near the cross of the keys has to come to a corner, in thousandths, when all is looked at. */
const crossReach = 14;

/** What hands and keys do over the drawing: the view, the cross of the keys, a corner on its way. */
export function useHand(state: DrawingState, act: (act: DrawingAct) => void, around: DrawnAround) {
  const [view, setView] = useState<View>(wholeView);
  const [onItsWay, setOnItsWay] = useState<{ from: Corner; to: Corner } | null>(null);
  const { aspect } = around;
  const keysReach = crossReach / view.near;
  const cornerOf = ({ x, y }: Spot): Corner => [x, y / aspect];
  const landing = (corner: Corner, reach: number, gone: Corner | null = null) =>
    landsOn(corner, [...outlinesWithout(gone, state.shapes), state.begun], reach, aspect);
  const cornerNear = (corner: Corner, reach: number) =>
    cornersOf(state).find((each) => farBetween(each, corner, aspect) <= reach);

  const tapAt = (corner: Corner, reach: number, isMore: boolean) => {
    if (state.tool === 'choose' || (state.tool === 'cut' && state.chosen.length !== 1)) {
      act({ do: 'choose', number: numberAt(state.shapes, corner), isMore });
      return;
    }
    const isCut = state.tool === 'cut';
    act({ do: 'corner', at: isCut ? corner : landing(corner, reach), around });
  };
  const touch = useTouch({
    tap: (spot, event) => tapAt(cornerOf(spot), spot.reach, isMoreTouch(event)),
    takeUp: (spot) => {
      if (state.tool !== 'choose') return null;
      const near = cornerNear(cornerOf(spot), spot.reach);
      return near ? near.join(' ') : null;
    },
    draw: (what, spot, isLetGo) => {
      const from = cornerNamed(what);
      const to = landing(cornerOf(spot), spot.reach, from);
      setOnItsWay(isLetGo ? null : { from, to });
      if (isLetGo) act({ do: 'move_corner', from, to });
    },
    shift: (dx, dy) => setView((before) => shifted(before, dx, dy, aspect)),
    zoom: (by, spot) => pinch(by, spot),
  });
  const twice = (corner: Corner, reach: number) => {
    if (state.tool !== 'choose') return;
    const near = cornerNear(corner, reach);
    const landed = landing(corner, reach);
    if (near) act({ do: 'take_corner', at: near });
    else if (!isSame(landed, keptCorner(corner))) act({ do: 'add_corner', at: landed });
  };
  const onDoubleClick = (event: MouseEvent<SVGSVGElement>) => {
    const spot = spotsOf(event.currentTarget)(event.clientX, event.clientY);
    twice(cornerOf(spot), spot.reach);
  };
  const zoom = (by: number) => setView((before) => nearer(before, by, middleOf(before, aspect)));
  const pinch = (by: number, spot: { x: number; y: number }) =>
    setView((before) => nearer(before, by, spot));
  const { cross, onKeyDown } = useCross(aspect, (event, at) =>
    isKeyDone(event, {
      ...{ state, act, around, zoom },
      tap: () => tapAt(at, keysReach, event.shiftKey),
      twice: () => twice(at, keysReach),
    }),
  );
  return { view, setView, zoom, cross, onItsWay, touch, pinch, onKeyDown, onDoubleClick };
}

/** The corners that can be drawn along: those of the parts that are chosen. */
export function cornersOf({ shapes, chosen }: DrawingState): Corner[] {
  return shapes.flatMap(({ number, outline }) => (chosen.includes(number) ? outline : []));
}

/** What a touch can land on: no corner lands on itself. */
function outlinesWithout(gone: Corner | null, shapes: readonly Shape[]) {
  return shapes.map(({ outline }) =>
    gone ? outline.filter((each) => farBetween(each, gone) > 0) : outline,
  );
}

function numberAt(shapes: readonly Shape[], corner: Corner): number | null {
  return shapes.find(({ outline }) => isInside(outline, corner))?.number ?? null;
}

function isMoreTouch(event: PointerEvent): boolean {
  return event.shiftKey || event.ctrlKey || event.metaKey;
}

function cornerNamed(name: string): Corner {
  const [x = 0, y = 0] = name.split(' ').map(Number);
  return [x, y];
}

function middleOf({ x, y, near }: View, aspect: number) {
  return { x: x + drawnWidth / near / 2, y: y + (drawnWidth * aspect) / near / 2 };
}
