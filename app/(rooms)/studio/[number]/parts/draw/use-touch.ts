'use client';

import { useRef, type PointerEvent } from 'react';

/** A spot of the picture, in its own units, and how far round it a finger reaches. */
export type Spot = { x: number; y: number; reach: number };

/** How far a finger reaches round the spot it touches, in pixels of the screen. */
const fingerPx = 22;
/** What it reaches at least and at most, in units of the picture. */
const [reachLeast, reachMost] = [5, 40];

/** What is done with what the hand does. */
export type Hand = {
  /** A touch that did not move: where. */
  tap: (spot: Spot, event: PointerEvent) => void;
  /** What is taken up where the hand comes down, such as a corner; null when nothing is. */
  takeUp: (spot: Spot) => string | null;
  /** What was taken up is drawn on, and at last let go. */
  draw: (what: string, spot: Spot, isLetGo: boolean) => void;
  shift: (dx: number, dy: number) => void;
  zoom: (by: number, spot: Spot) => void;
};

type Down = { x: number; y: number };

/** A hand that trembles less than this, in pixels of the screen, taps. */
const tremble = 7;

/** Reads fingers, pens and the mouse over a picture: taps, corners drawn along, shifts, two fingers. */
export function useTouch(hand: Hand) {
  const down = useRef(new Map<number, Down>());
  const taken = useRef<string | null>(null);
  const hasMoved = useRef(false);

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button > 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    down.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (down.current.size > 1) {
      hasMoved.current = true;
      taken.current = null;
      return;
    }
    hasMoved.current = false;
    const spotOf = spotsOf(event.currentTarget);
    taken.current = hand.takeUp(spotOf(event.clientX, event.clientY));
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const from = down.current.get(event.pointerId);
    if (!from) return;
    const to = { x: event.clientX, y: event.clientY };
    if (!hasMoved.current && Math.hypot(to.x - from.x, to.y - from.y) < tremble) return;
    hasMoved.current = true;
    const spotOf = spotsOf(event.currentTarget);
    const others = [...down.current].filter(([id]) => id !== event.pointerId);
    const other = others[0]?.[1];
    down.current.set(event.pointerId, to);
    if (other) {
      const by = Math.hypot(to.x - other.x, to.y - other.y) / apart(from, other);
      hand.zoom(by, spotOf((to.x + other.x) / 2, (to.y + other.y) / 2));
      return;
    }
    if (taken.current !== null) {
      hand.draw(taken.current, spotOf(to.x, to.y), false);
      return;
    }
    const [before, after] = [spotOf(from.x, from.y), spotOf(to.x, to.y)];
    hand.shift(before.x - after.x, before.y - after.y);
  };
  const onPointerUp = (event: PointerEvent<SVGSVGElement>) => {
    const isLast = down.current.delete(event.pointerId) && down.current.size === 0;
    if (!isLast) return;
    const spot = spotsOf(event.currentTarget)(event.clientX, event.clientY);
    if (!hasMoved.current) hand.tap(spot, event);
    else if (taken.current !== null) hand.draw(taken.current, spot, true);
    taken.current = null;
  };
  const onPointerCancel = (event: PointerEvent<SVGSVGElement>) => {
    down.current.delete(event.pointerId);
    taken.current = null;
  };
  return { onPointerDown, onPointerMove, onPointerUp, onPointerCancel };
}

function apart(one: Down, other: Down): number {
  return Math.max(1, Math.hypot(one.x - other.x, one.y - other.y));
}

/** From a place on the screen to a spot of the picture. */
export function spotsOf(picture: SVGSVGElement): (x: number, y: number) => Spot {
  const screen = picture.getScreenCTM();
  const reach = Math.min(reachMost, Math.max(reachLeast, fingerPx / (screen?.a ?? 1)));
  return (x, y) => {
    const spot = new DOMPoint(x, y).matrixTransform(screen?.inverse());
    return { x: spot.x, y: spot.y, reach };
  };
}
