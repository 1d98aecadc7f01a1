import { MaxRectsBin } from 'maxrects-packer';
import type { Sides, Weighed } from './measures';

/** One thing to be packed, lying as it will lie: its height is what it stands up in the box. */
export type ToPack = Weighed & { readonly key: string };

/** What one box or crate takes: the room for what is in it, and what that may weigh. */
export type Room = Sides & {
  readonly mostG: number;
  /** Foam between two things, and between two layers. */
  readonly gapUm: number;
};

/** A layer of a box. */
export type Layer = { readonly parts: readonly ToPack[]; readonly heightUm: number };

/** What goes together: its layers from the bottom up, the heaviest first, and what they come to. */
export type Filled = {
  readonly layers: readonly Layer[];
  /** The room that they take, as they lie. */
  readonly content: Weighed;
};

/** What goes into which box, and what goes into none of this size. */
export type Filling = {
  readonly boxes: readonly Filled[];
  readonly left: readonly { readonly part: ToPack; readonly why: 'too_large' | 'too_heavy' }[];
};

type OpenLayer = { bin: MaxRectsBin; parts: ToPack[]; heightUm: number; farUm: [number, number] };
type Open = { layers: OpenLayer[]; weightG: number };

/**
 * Shares things out over as few boxes as it finds, none heavier than it may be, and all about alike
 * in weight: the heaviest goes first, each into the lightest box that has room for it in a layer.
 * Where as many boxes take them one after the other as they are given, neighbours stay together.
 *
 * @returns every part once, in a box or in `left`; the same parts always go the same way
 * @source common practice; the layers by the maximal-rectangles method of the library maxrects-packer
 */
export function fillBoxes(parts: readonly ToPack[], room: Room): Filling {
  const fitting: ToPack[] = [];
  const left: { part: ToPack; why: 'too_large' | 'too_heavy' }[] = [];
  for (const part of parts) {
    const why = whyNot(part, room);
    if (why) left.push({ part, why });
    else fitting.push(part);
  }
  if (fitting.length === 0) return { boxes: [], left };

  const totalG = fitting.reduce((sum, { weightG }) => sum + weightG, 0);
  const first = fillFrom(fitting, room, Math.ceil(totalG / room.mostG));
  const again = fillFrom(fitting, room, first.length);
  const fewest = again.length <= first.length ? again : first;
  const chosen = fillInOrder(fitting, room, fewest.length) ?? fewest;
  return { boxes: chosen.filter(({ weightG }) => weightG > 0).map((box) => told(box, room)), left };
}

function whyNot(part: ToPack, room: Room): 'too_large' | 'too_heavy' | null {
  const lies = part.lengthUm <= room.lengthUm && part.widthUm <= room.widthUm;
  const liesTurned = part.widthUm <= room.lengthUm && part.lengthUm <= room.widthUm;
  if (part.heightUm > room.heightUm || !(lies || liesTurned)) return 'too_large';
  return part.weightG > room.mostG ? 'too_heavy' : null;
}

/** Begins with so many boxes, and opens one more whenever nothing takes a part. */
function fillFrom(parts: readonly ToPack[], room: Room, count: number): Open[] {
  const boxes = Array.from({ length: count }, (): Open => ({ layers: [], weightG: 0 }));
  for (const part of heaviestFirst(parts)) {
    const lightestFirst = boxes.toSorted((one, other) => one.weightG - other.weightG);
    if (lightestFirst.some((box) => putIn(box, part, room))) continue;
    const box: Open = { layers: [], weightG: 0 };
    putIn(box, part, room);
    boxes.push(box);
  }
  return boxes;
}

/** One box after the other, each to its share of what is left; null where so many do not take all. */
function fillInOrder(parts: readonly ToPack[], room: Room, count: number): Open[] | null {
  const boxes = Array.from({ length: count }, (): Open => ({ layers: [], weightG: 0 }));
  let leftG = parts.reduce((sum, { weightG }) => sum + weightG, 0);
  let [at, shareG] = [0, leftG / count];
  for (const part of parts) {
    const box = boxes[at];
    const isDone = box !== undefined && box.weightG + part.weightG / 2 > shareG;
    if (isDone && at < count - 1) {
      leftG -= box.weightG;
      at += 1;
      shareG = leftG / (count - at);
    }
    const open = boxes[at];
    if (!open || !putIn(open, part, room)) return null;
  }
  return boxes;
}

function heaviestFirst(parts: readonly ToPack[]): ToPack[] {
  return parts.toSorted(
    (one, other) =>
      other.weightG - one.weightG ||
      other.lengthUm * other.widthUm - one.lengthUm * one.widthUm ||
      one.key.localeCompare(other.key, 'en', { numeric: true }),
  );
}

function putIn(box: Open, part: ToPack, room: Room): boolean {
  if (box.weightG + part.weightG > room.mostG) return false;
  const isIn =
    box.layers.some((layer) => layInto(layer, part, room, box)) || layOnTop(box, part, room);
  if (isIn) box.weightG += part.weightG;
  return isIn;
}

function highUm(layers: readonly { heightUm: number }[], gapUm: number): number {
  const gaps = Math.max(0, layers.length - 1) * gapUm;
  return layers.reduce((sum, { heightUm }) => sum + heightUm, gaps);
}

function layInto(layer: OpenLayer, part: ToPack, room: Room, box: Open): boolean {
  const grows = Math.max(0, part.heightUm - layer.heightUm);
  if (highUm(box.layers, room.gapUm) + grows > room.heightUm) return false;
  const placed = layer.bin.add(part.lengthUm + room.gapUm, part.widthUm + room.gapUm, null);
  if (!placed) return false;
  layer.parts.push(part);
  layer.heightUm += grows;
  layer.farUm = [
    Math.max(layer.farUm[0], placed.x + placed.width - room.gapUm),
    Math.max(layer.farUm[1], placed.y + placed.height - room.gapUm),
  ];
  return true;
}

function layOnTop(box: Open, part: ToPack, room: Room): boolean {
  const under = highUm(box.layers, room.gapUm);
  const gap = box.layers.length > 0 ? room.gapUm : 0;
  if (under + gap + part.heightUm > room.heightUm) return false;
  const [length, width] = [room.lengthUm + room.gapUm, room.widthUm + room.gapUm];
  const bin = new MaxRectsBin(length, width, 0, {
    ...{ smart: false, pot: false, square: false, allowRotation: true },
  });
  const layer: OpenLayer = { bin, parts: [], heightUm: part.heightUm, farUm: [0, 0] };
  if (!layInto(layer, part, room, { layers: [], weightG: 0 })) return false;
  box.layers.push(layer);
  return true;
}

function told(box: Open, room: Room): Filled {
  const weightOf = (layer: OpenLayer) => layer.parts.reduce((sum, part) => sum + part.weightG, 0);
  const layers = box.layers.toSorted((one, other) => weightOf(other) - weightOf(one));
  return {
    layers: layers.map(({ parts, heightUm }) => ({ parts, heightUm })),
    content: {
      lengthUm: Math.max(...layers.map(({ farUm }) => farUm[0])),
      widthUm: Math.max(...layers.map(({ farUm }) => farUm[1])),
      heightUm: highUm(layers, room.gapUm),
      weightG: box.weightG,
    },
  };
}
