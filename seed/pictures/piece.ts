import sharp from 'sharp';
import { chanceOf } from './chance';
import { colourwayOf } from './colourways';
import { emptyField, mix, sample, type Field } from './clay/field';
import { panelForm, platterForm, slabForm } from './clay/flat-forms';
import type { Form, PicturedKind } from './clay/form';
import { glazed } from './clay/glaze';
import { lightOver } from './clay/light';
import { motifOf } from './motifs';
import { Pen } from './pen';
import { bowlForm, lampForm, planterForm } from './clay/round-forms';
import { shadowOf } from './clay/shadow';

/** What is to be pictured. `proportion` is width by height; `seed` makes each piece its own. */
export type PieceOrder = Readonly<{
  motif: string;
  kind: PicturedKind;
  colourway: string;
  seed: number | string;
  proportion?: number | undefined;
  /** The long side in pixels. */
  widthPx?: number | undefined;
}>;

/** A picture, ready to be kept. */
export type Rendered = Readonly<{ bytes: Buffer; widthPx: number; heightPx: number }>;

/**
 * Makes, glazes and lights a piece, and pictures it with its shadow on a clear ground, so that it
 * hangs on whatever wall it is put on.
 *
 * @returns WebP with a clear ground; the same order always gives the same bytes
 */
export async function renderPiece(order: PieceOrder): Promise<Rendered> {
  const seed = `${order.motif}${order.kind}${order.colourway}${order.seed}`;
  const colourway = colourwayOf(order.colourway);
  const form = await formOf(order, seed);
  const { relief, zone } = await drawn(order.motif, form, seed);
  const lit = lightOver(form, relief, seed);
  const clay = glazed(form, lit, zone, { colourway, seed });
  const { wide, high } = form;
  const raw = { raw: { width: wide, height: high, channels: 4 as const } };
  const colours = colourway.ground;
  const layers = [
    { input: shadowOf(form), ...raw },
    ...(form.under ? [{ input: svg(form, form.under(colours)) }] : []),
    { input: Buffer.from(clay.buffer), ...raw },
    ...(form.over ? [{ input: svg(form, form.over(colours)) }] : []),
  ];
  const ground = { width: wide, height: high, channels: 4 as const, background: '#00000000' };
  const bytes = await sharp({ create: ground })
    .composite(layers)
    .webp({ quality: 74, alphaQuality: 90, effort: 2 })
    .toBuffer();
  return { bytes, widthPx: wide, heightPx: high };
}

/** The height of clay that nothing is drawn on. */
const plain = 0.3;

/** The form of the kind, at its proportion. */
async function formOf(order: PieceOrder, seed: string): Promise<Form> {
  const long = order.widthPx ?? 900;
  const chance = chanceOf(`${seed}form`);
  switch (order.kind) {
    case 'relief_tile':
      return slabForm(long, order.proportion ?? 1, chance, false);
    case 'plaque': {
      const proportion = order.proportion ?? 4 / 7;
      return slabForm(long, proportion, chance, proportion < 0.8);
    }
    case 'wall_panel':
      return panelForm(long, order.proportion ?? 1.5, chance);
    case 'platter':
      return platterForm(long, chance);
    case 'lamp':
      return lampForm(long);
    case 'planter':
      return planterForm(long);
    case 'bowl':
      return bowlForm(long);
  }
}

/** The motif laid on the form, as heights and as shares of the second glaze. */
export async function drawn(
  motif: string,
  form: Form,
  seed: string,
): Promise<{ relief: Field; zone: Field }> {
  const { wide, high, sheet } = form;
  const pen = new Pen();
  motifOf(motif).draw({ ...sheet, chance: chanceOf(seed), pen });
  const drawing = Buffer.from(pen.drawing(sheet, wide, high));
  const { data } = await sharp(drawing).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const flatRelief = emptyField(wide, high);
  const flatZone = emptyField(wide, high);
  for (let at = 0; at < wide * high; at += 1) {
    flatRelief.at[at] = (data[at * 3] ?? 0) / 255;
    flatZone.at[at] = (data[at * 3 + 1] ?? 0) / 255;
  }
  const relief = emptyField(wide, high);
  const zone = emptyField(wide, high);
  for (let y = 0; y < high; y += 1) {
    for (let x = 0; x < wide; x += 1) {
      const at = y * wide + x;
      if ((form.mask.at[at] ?? 0) <= 0) continue;
      const [across, down] = form.place(x, y);
      const calm = form.calm.at[at] ?? 0;
      relief.at[at] = mix(plain, sample(flatRelief, across * wide, down * high), calm);
      zone.at[at] = sample(flatZone, across * wide, down * high) * calm;
    }
  }
  return { relief, zone };
}

function svg(form: Form, shapes: string): Buffer {
  return Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${form.wide}" height="${form.high}">` +
      `${shapes}</svg>`,
  );
}
