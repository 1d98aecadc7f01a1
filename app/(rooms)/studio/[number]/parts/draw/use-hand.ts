'use client';

import { useState, type MouseEvent, type PointerEvent, type WheelEvent } from 'react';
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

/** How near a touch has to come to a corner, in thousandths of the width, when all is looked at. */
const reach = 14;

/** What hands and keys do over the drawing: the view, the cross of the keys, a corner on its way. */
export function useHand(state: DrawingState, act: (act: DrawingAct) => void, around: DrawnAround) {
  const [view, setView] = useState<View>(wholeView);
  const [onItsWay, setOnItsWay] = useState<{ from: Corner; to: Corner } | null>(null);
  const { aspect } = around;
  const within = reach / view.near;
  const cornerOf = ({ x, y }: Spot): Corner => [x, y / aspect];
  const others = (gone: Corner | null) =>
    state.shapes.map(({ outline }) =>
      gone ? outline.filter((each) => farBetween(each, gone) > 0) : outline,
    );
  const landing = (corner: Corner, gone: Corner | null = null) =>
    landsOn(corner, [...others(gone), state.begun], within, aspect);

  const tapAt = (corner: Corner, isMore: boolean) => {
    if (state.tool === 'choose' || (state.tool === 'cut' && state.chosen.length !== 1)) {
      act({ do: 'choose', number: numberAt(state.shapes, corner), isMore });
      return;
    }
    const isCut = state.tool === 'cut';
    act({ do: 'corner', at: isCut ? corner : landing(corner), around });
  };
  const touch = useTouch({
    tap: (spot, event) => tapAt(cornerOf(spot), isMoreTouch(event)),
    takeUp: (spot) => {
      if (state.tool !== 'choose') return null;
      const near = cornersOf(state).find(
        (each) => farBetween(each, cornerOf(spot), aspect) <= within,
      );
      return near ? near.join(' ') : null;
    },
    draw: (what, spot, isLetGo) => {
      const from = cornerNamed(what);
      const to = landing(cornerOf(spot), from);
      setOnItsWay(isLetGo ? null : { from, to });
      if (isLetGo) act({ do: 'move_corner', from, to });
    },
    shift: (dx, dy) => setView((before) => shifted(before, dx, dy, aspect)),
    zoom: (by, spot) => setView((before) => nearer(before, by, spot)),
  });
  const twice = (corner: Corner) => {
    if (state.tool !== 'choose') return;
    const near = cornersOf(state).find((each) => farBetween(each, corner, aspect) <= within);
    const landed = landing(corner);
    if (near) act({ do: 'take_corner', at: near });
    else if (!isSame(landed, keptCorner(corner))) act({ do: 'add_corner', at: landed });
  };
  const onDoubleClick = (event: MouseEvent<SVGSVGElement>) =>
    twice(cornerOf(spotsOf(event.currentTarget)(event.clientX, event.clientY)));
  const zoom = (by: number) => setView((before) => nearer(before, by, middleOf(before, aspect)));
  const onWheel = (event: WheelEvent) => {
    if (event.ctrlKey || view.near > 1) zoom(event.deltaY < 0 ? 1.15 : 1 / 1.15);
  };

  const { cross, onKeyDown } = useCross(aspect, (event, at) =>
    isKeyDone(event, {
      ...{ state, act, around, zoom },
      tap: () => tapAt(at, event.shiftKey),
      twice: () => twice(at),
    }),
  );
  return { view, setView, zoom, cross, onItsWay, within, touch, onWheel, onKeyDown, onDoubleClick };
}

/** The corners that can be drawn along: those of the parts that are chosen. */
export function cornersOf({ shapes, chosen }: DrawingState): Corner[] {
  return shapes.flatMap(({ number, outline }) => (chosen.includes(number) ? outline : []));
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

function middleOf({ x, y, near }: View, aspect: number): Spot {
  return { x: x + drawnWidth / near / 2, y: y + (drawnWidth * aspect) / near / 2 };
}
