import sharp from 'sharp';
import { chanceOf } from './chance';
import { emptyField, mix, rise, soften, unevenness, type Field } from './clay/field';
import { slabForm } from './clay/flat-forms';
import { glazed } from './clay/glaze';
import { lightOver } from './clay/light';
import { shadowOf } from './clay/shadow';
import { colourwayOf } from './colourways';
import { drawn, type Rendered } from './piece';

/** What is to be sketched; a later round gets another `seed` and so another hand. */
export type SketchOrder = Readonly<{
  motif: string;
  seed: number | string;
  /** Width by height of the piece that is thought of. */
  proportion?: number | undefined;
  /** The long side in pixels. */
  widthPx?: number | undefined;
}>;

/**
 * A pencil sketch of a motif on paper, as it is shown to a collector before any clay is cut.
 *
 * @returns WebP on a sheet of warm paper; the same order always gives the same bytes
 */
export async function renderSketch(order: SketchOrder): Promise<Rendered> {
  const seed = `sketch${order.motif}${order.seed}`;
  const chance = chanceOf(`${seed}form`);
  const form = await slabForm(order.widthPx ?? 900, order.proportion ?? 1, chance, false);
  const { relief, zone } = await drawn(order.motif, form, seed);
  const { wide, high } = form;
  const marks = pencil(soften(relief, 1), seed);
  const grain = unevenness(wide, high, 2.2, `${seed}grain`);
  const paper = unevenness(wide, high, 60, `${seed}paper`);
  const outline = soften(form.mask, 1.5);
  const bytes = Buffer.alloc(wide * high * 3);
  for (let at = 0; at < wide * high; at += 1) {
    const inside = form.mask.at[at] ?? 0;
    const edge = 1 - Math.abs((outline.at[at] ?? 0) * 2 - 1);
    const tone = inside * ((marks.at[at] ?? 0) + 0.16 * (zone.at[at] ?? 0));
    const tooth = 0.72 + 0.4 * (grain.at[at] ?? 0);
    const dark = Math.min(0.9, (tone * 1.25 + edge * 0.45) * tooth);
    const white = 1 + 0.012 * (paper.at[at] ?? 0) + 0.01 * (grain.at[at] ?? 0);
    bytes[at * 3] = mix(245 * white, 62, dark);
    bytes[at * 3 + 1] = mix(240 * white, 60, dark);
    bytes[at * 3 + 2] = mix(229 * white, 62, dark);
  }
  const raw = { raw: { width: wide, height: high, channels: 3 as const } };
  const made = await sharp(bytes, raw).webp({ quality: 72, effort: 2 }).toBuffer();
  return { bytes: made, widthPx: wide, heightPx: high };
}

/** Lines where the clay would turn, and slanting strokes where it would lie in shade. */
function pencil(relief: Field, seed: string): Field {
  const { wide, high } = relief;
  const broad = soften(relief, 7);
  const sway = unevenness(wide, high, 40, `${seed}sway`);
  const press = unevenness(wide, high, 26, `${seed}press`);
  const marks: Field = { wide, high, at: new Float32Array(wide * high) };
  for (let y = 2; y < high - 2; y += 1) {
    for (let x = 2; x < wide - 2; x += 1) {
      const at = y * wide + x;
      const right = (relief.at[at + 2] ?? 0) - (relief.at[at - 2] ?? 0);
      const down = (relief.at[at + 2 * wide] ?? 0) - (relief.at[at - 2 * wide] ?? 0);
      const line = rise(0.05, 0.34, Math.hypot(right, down));
      const shade = rise(0.005, 0.13, (broad.at[at] ?? 0) - (relief.at[at] ?? 0));
      const lean = rise(0.01, 0.12, right + down);
      const stroke = Math.sin((x + y * 0.85 + (sway.at[at] ?? 0) * 9) * 0.62);
      const hatch = rise(0.05, 0.75, stroke) * Math.max(shade * 0.75, (1 - lean) * shade);
      const pressed = 0.78 + 0.3 * (press.at[at] ?? 0);
      marks.at[at] = Math.min(1, line * 0.85 * pressed + hatch * 0.5);
    }
  }
  return marks;
}

/**
 * A fired colour tile: ridges to see where the glaze breaks, a smooth field to see it pool, a band
 * of the drawing's glaze, and the hole it hangs by.
 *
 * @returns WebP with a clear ground, about 420 × 600 pixels; one colourway's tiles differ by `seed` only
 */
export async function renderColourTile(
  colourway: string,
  seed: number | string = 1,
  widthPx = 600,
): Promise<Rendered> {
  const firing = `tile${colourway}${seed}`;
  const form = await slabForm(widthPx, 0.66, chanceOf(firing), false);
  const { wide, high } = form;
  const drawing = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${high}" ` +
      `viewBox="0 0 66 100" preserveAspectRatio="none"><rect width="66" height="100" ` +
      `fill="rgb(77,0,0)"/><rect y="42" width="66" height="21" fill="rgb(77,255,0)"/>` +
      [67, 72, 77, 82, 87, 92]
        .map((y) => `<path d="M0 ${y}H66" stroke="rgb(225,0,0)" stroke-width="2"/>`)
        .join('') +
      `<path d="M33 44C38 50 40 56 33 61C26 56 28 50 33 44Z" fill="rgb(235,255,0)"/>` +
      `<path d="M33 44V61" stroke="rgb(120,255,0)" stroke-width=".7"/></svg>`,
  );
  const { data } = await sharp(drawing).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const relief = emptyField(wide, high);
  const zone = emptyField(wide, high);
  for (let at = 0; at < wide * high; at += 1) {
    relief.at[at] = (data[at * 3] ?? 0) / 255;
    zone.at[at] = (data[at * 3 + 1] ?? 0) / 255;
  }
  pierced(form.mask, wide, high);
  const lit = lightOver(form, relief, firing);
  const clay = glazed(form, lit, zone, { colourway: colourwayOf(colourway), seed: firing });
  const raw = { raw: { width: wide, height: high, channels: 4 as const } };
  const ground = { width: wide, height: high, channels: 4 as const, background: '#00000000' };
  const bytes = await sharp({ create: ground })
    .composite([
      { input: shadowOf(form), ...raw },
      { input: Buffer.from(clay.buffer), ...raw },
    ])
    .webp({ quality: 82, effort: 2 })
    .toBuffer();
  return { bytes, widthPx: wide, heightPx: high };
}

function pierced(mask: { at: Float32Array }, wide: number, high: number): void {
  const middle = wide / 2;
  const level = high * 0.135;
  const radius = wide * 0.04;
  for (let y = 0; y < high * 0.25; y += 1) {
    for (let x = 0; x < wide; x += 1) {
      const out = Math.hypot(x - middle, y - level) - radius;
      if (out < 1) mask.at[y * wide + x] = Math.max(0, out) * (mask.at[y * wide + x] ?? 0);
    }
  }
}
