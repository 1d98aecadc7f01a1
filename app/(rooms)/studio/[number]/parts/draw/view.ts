import { drawnWidth } from '../outline-path';

/** Which piece of the drawing is looked at: its upper left, in the picture's units, and how near. */
export type View = { x: number; y: number; near: number };

/** The whole drawing, with a little room round it. */
export const wholeView: View = { x: 0, y: 0, near: 1 };

const rim = 30;
const nearMost = 12;

/** The box of the picture that a view shows. */
export function boxOfView(view: View, aspect: number) {
  const [width, height] = [drawnWidth + 2 * rim, drawnWidth * aspect + 2 * rim];
  return { x: view.x - rim, y: view.y - rim, width: width / view.near, height: height / view.near };
}

/** A view nearer or farther by a factor; the spot under the finger stays where it is. */
export function nearer(view: View, by: number, spot: { x: number; y: number }): View {
  const near = Math.min(nearMost, Math.max(1, view.near * by));
  if (near === 1) return wholeView;
  const share = view.near / near;
  const x = spot.x - (spot.x - (view.x - rim)) * share + rim;
  const y = spot.y - (spot.y - (view.y - rim)) * share + rim;
  return { x, y, near };
}

/** A view shifted by so much of the picture; the whole drawing does not shift. */
export function shifted(view: View, dx: number, dy: number, aspect: number): View {
  if (view.near === 1) return wholeView;
  const within = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const most = 1 - 1 / view.near;
  return {
    x: within(view.x + dx, (drawnWidth + 2 * rim) * most),
    y: within(view.y + dy, (drawnWidth * aspect + 2 * rim) * most),
    near: view.near,
  };
}
