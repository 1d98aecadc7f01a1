import sharp from 'sharp';
import { emptyField, type Field } from './field';

/** The kinds of piece that can be pictured. */
export type PicturedKind =
  'relief_tile' | 'plaque' | 'wall_panel' | 'lamp' | 'platter' | 'planter' | 'bowl';

/** Where a pixel of the picture lies on the motif's sheet, both from 0 to 1. */
export type Place = (x: number, y: number) => readonly [across: number, down: number];

/**
 * The clay's own form in the picture, before any drawing: where it is, how it bends away from the
 * eye, and where the motif lies on it.
 */
export type Form = Readonly<{
  wide: number;
  high: number;
  /** One where there is clay. */
  mask: Field;
  /** The bend of the form: the surface's lean to the right and down, each −1 to 1. */
  leanX: Field;
  leanY: Field;
  /** The form's own height in pixels towards the eye: edges, rims and joints. */
  bulk: Field;
  /** The sheet's proportion and its place. */
  sheet: Readonly<{ wide: number; high: number }>;
  place: Place;
  /** One where the drawing may lie, less towards rims and feet that are kept plain. */
  calm: Field;
  /** Hangs on the wall, or stands on something. */
  stands: boolean;
  /** How much relief the clay carries, in pixels. */
  reliefPx: number;
  /** Drawn under and over the clay, such as a lampshade or the dark of an opening. */
  under?: (colours: Readonly<{ pool: string; thin: string }>) => string;
  over?: (colours: Readonly<{ pool: string; thin: string }>) => string;
}>;

/** Draws an outline as a field of 0 to 1. */
export async function maskOf(shapes: string, wide: number, high: number): Promise<Field> {
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${high}">` +
    `<rect width="100%" height="100%" fill="#000"/><g fill="#fff">${shapes}</g></svg>`;
  const bytes = await sharp(Buffer.from(svg)).extractChannel(0).raw().toBuffer();
  const field = emptyField(wide, high);
  for (let at = 0; at < bytes.length; at += 1) field.at[at] = (bytes[at] ?? 0) / 255;
  return field;
}

/** Fills a field from a rule over its pixels. */
export function fieldBy(wide: number, high: number, rule: (x: number, y: number) => number): Field {
  const field = emptyField(wide, high);
  for (let y = 0; y < high; y += 1) {
    for (let x = 0; x < wide; x += 1) field.at[y * wide + x] = rule(x, y);
  }
  return field;
}
