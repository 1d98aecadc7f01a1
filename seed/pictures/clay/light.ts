import { rise, soften, unevenness, type Field, mix } from './field';
import type { Form } from './form';

/** What the eye gets from the surface before it has a colour. */
export type Lit = Readonly<{
  /** How much light falls on each pixel; about 1 on a plain surface. */
  light: Field;
  /** The shine of a wet gloss, 0 to 1. */
  shine: Field;
  /** Where a glaze gathers (towards 1) and where it lies thin (towards 0). */
  gathers: Field;
  /** Where the clay comes through on an edge. */
  breaks: Field;
}>;

/** The light of the gallery: from the upper left, low, so that it rakes over the relief. */
const sun = unit([-0.58, -0.6, 0.56]);
const between = unit([sun[0], sun[1], sun[2] + 1]);

/** Lets the light rake over a relief on its form. */
export function lightOver(form: Form, relief: Field, seed: string): Lit {
  const { wide, high } = relief;
  const surface = surfaceOf(form, relief, seed);
  const near = soften(surface, 5);
  const far = soften(surface, wide * 0.018);
  const lit: Lit = {
    light: { wide, high, at: new Float32Array(wide * high) },
    shine: { wide, high, at: new Float32Array(wide * high) },
    gathers: { wide, high, at: new Float32Array(wide * high) },
    breaks: { wide, high, at: new Float32Array(wide * high) },
  };
  const deep = form.reliefPx;
  const ways = waysToSun(wide);
  for (let y = 1; y < high - 1; y += 1) {
    for (let x = 1; x < wide - 1; x += 1) {
      const at = y * wide + x;
      if ((form.mask.at[at] ?? 0) < 0.01) continue;
      const here = surface.at[at] ?? 0;
      const nearby = (near.at[at] ?? 0) - here;
      const around = (far.at[at] ?? 0) - here;
      const leanX = (form.leanX.at[at] ?? 0) - slope(surface, at, 1);
      const leanY = (form.leanY.at[at] ?? 0) - slope(surface, at, wide);
      const away = Math.max(0.12, 1 - (form.leanX.at[at] ?? 0) ** 2);
      const length = Math.sqrt(leanX * leanX + leanY * leanY + away);
      const nx = leanX / length;
      const ny = leanY / length;
      const nz = Math.sqrt(away) / length;
      const falls = Math.max(0, nx * sun[0] + ny * sun[1] + nz * sun[2]);
      const shade = shadowAt(surface.at, at, ways);
      const open =
        mix(1, 0.42, rise(0, deep * 0.75, around)) * mix(1, 0.7, rise(0, deep * 0.3, nearby));
      const sky = 0.3 + 0.14 * nz - 0.12 * ny;
      lit.light.at[at] = sky * open + 1.15 * falls * shade;
      const facing = nx * between[0] + ny * between[1] + nz * between[2];
      lit.shine.at[at] = shineOf(facing) * shade;
      lit.gathers.at[at] = 0.42 + (nearby / deep) * 2.6 + (around / deep) * 1.1;
      lit.breaks.at[at] = rise(deep * 0.05, deep * 0.22, -nearby);
    }
  }
  return lit;
}

/** The relief in pixels, with the form's own height and the marks of hand and tool. */
function surfaceOf(form: Form, relief: Field, seed: string): Field {
  const { wide, high } = relief;
  const crisp = soften(relief, 1);
  const round = soften(relief, wide * 0.0045);
  const full = soften(relief, wide * 0.014);
  const hand = unevenness(wide, high, wide * 0.055, `${seed}hand`);
  const tool = unevenness(wide, high, 5, `${seed}tool`);
  const at = new Float32Array(wide * high);
  for (let i = 0; i < at.length; i += 1) {
    const drawn = 0.42 * (crisp.at[i] ?? 0) + 0.36 * (round.at[i] ?? 0) + 0.22 * (full.at[i] ?? 0);
    const marks = 0.035 * (hand.at[i] ?? 0) + 0.009 * (tool.at[i] ?? 0);
    at[i] = (drawn + marks) * form.reliefPx * 1.25 + (form.bulk.at[i] ?? 0);
  }
  return { wide, high, at };
}

function slope({ at }: Field, here: number, step: number): number {
  return ((at[here + step] ?? 0) - (at[here - step] ?? 0)) * 0.5;
}

/** How far towards the sun a shadow is looked for, in pixels. */
const reaches = [3, 6, 10, 15, 22] as const;

type Way = Readonly<{ offset: number; climb: number }>;

function waysToSun(wide: number): readonly Way[] {
  return reaches.map((reach) => ({
    offset: Math.round(sun[1] * reach * 1.2) * wide + Math.round(sun[0] * reach * 1.2),
    climb: reach * 0.62,
  }));
}

/** 1 in the light, less where higher clay stands between a pixel and the sun. */
function shadowAt(surface: Float32Array, at: number, ways: readonly Way[]): number {
  const here = surface[at] ?? 0;
  let hidden = 0;
  for (const way of ways) {
    const over = (surface[Math.max(0, at + way.offset)] ?? 0) - here - way.climb;
    if (over > hidden) hidden = over;
  }
  return hidden === 0 ? 1 : 1 - 0.72 * rise(0, 5, hidden);
}

/** A small bright glint within a wider sheen; `facing` is how squarely the light is thrown back. */
function shineOf(facing: number): number {
  if (facing < 0.7) return 0;
  const eighth = facing ** 2 * facing ** 2 * facing ** 2 * facing ** 2;
  const sixteenth = eighth * eighth;
  const sharp = sixteenth * sixteenth * sixteenth * sixteenth * sixteenth * eighth;
  return 0.75 * sharp + 0.16 * sixteenth;
}

function unit([x, y, z]: readonly [number, number, number]): [number, number, number] {
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}
