import { chanceOf } from '../chance';
import type { Colourway, Glaze } from '../colourways';
import { emptyField, mix, rise, soften, unevenness, type Field } from './field';
import type { Form } from './form';
import type { Lit } from './light';

type Colour = readonly [red: number, green: number, blue: number];
type Mixed = Readonly<{ thin: Colour; pool: Colour; breaks: Colour }>;

/** The piece fired: RGBA bytes, clear where there is no clay. */
export function glazed(
  form: Form,
  lit: Lit,
  zone: Field,
  firing: Readonly<{ colourway: Colourway; seed: string }>,
): Uint8ClampedArray {
  const { wide, high, mask } = form;
  const { colourway, seed } = firing;
  const ground = mixed(colourway.ground);
  const drawing = mixed(colourway.drawing);
  const bled = soften(zone, 2);
  const clouds = unevenness(wide, high, wide * 0.11, `${seed}cloud`);
  const drops = unevenness(wide, high, wide * 0.022, `${seed}drop`);
  const specks = specksOf(form, colourway.specks, seed);
  const bytes = new Uint8ClampedArray(wide * high * 4);
  const value = (field: Field, at: number) => field.at[at] ?? 0;
  for (let at = 0; at < wide * high; at += 1) {
    const clay = value(mask, at);
    if (clay <= 0) continue;
    const moved = value(clouds, at) * 0.2 + value(drops, at) * 0.07;
    const thick = clamp(value(lit.gathers, at) + moved * (0.5 + colourway.runs));
    const share = rise(0.15, 0.85, value(bled, at));
    const edge = value(lit.breaks, at) * (0.55 + 0.35 * value(drops, at));
    const light = value(lit.light, at) * (1 - value(specks, at));
    const shine = value(lit.shine, at) * colourway.gloss * 0.75;
    for (let part = 0; part < 3; part += 1) {
      const one = glazePart(ground, part, thick, edge);
      const two = glazePart(drawing, part, thick, edge);
      bytes[at * 4 + part] = toScreen(mix(one, two, share) * light + shine);
    }
    bytes[at * 4 + 3] = clay * 255;
  }
  return bytes;
}

function glazePart(glaze: Mixed, part: number, thick: number, edge: number): number {
  const body = mix(glaze.thin[part] ?? 0, glaze.pool[part] ?? 0, thick);
  return mix(body, glaze.breaks[part] ?? 0, clamp(edge));
}

function specksOf(form: Form, share: number, seed: string): Field {
  const { wide, high } = form;
  const field = emptyField(wide, high);
  const specks = field.at;
  const chance = chanceOf(`${seed}specks`);
  const count = Math.round(share * wide * high * 0.0011);
  for (let speck = 0; speck < count; speck += 1) {
    const x = Math.floor(chance.between(2, wide - 3));
    const y = Math.floor(chance.between(2, high - 3));
    const dark = chance.between(0.12, 0.6);
    specks[y * wide + x] = dark;
    specks[y * wide + x + 1] = dark * 0.7;
    specks[(y + 1) * wide + x] = dark * 0.6;
  }
  return field;
}

function mixed(glaze: Glaze): Mixed {
  return { thin: linear(glaze.thin), pool: linear(glaze.pool), breaks: linear(glaze.breaks) };
}

function linear(hex: string): Colour {
  const part = (from: number) => (parseInt(hex.slice(from, from + 2), 16) / 255) ** 2.2;
  return [part(1), part(3), part(5)];
}

/** Bends the brightest light softly, as film does, and brings it to the screen's scale. */
const screen = Uint8ClampedArray.from({ length: 4097 }, (_none, step) => {
  const value = step / 2048;
  const held = value < 0.75 ? value : 0.75 + (1 - Math.exp(-(value - 0.75) * 2.2)) * 0.25;
  return 255 * held ** (1 / 2.2);
});

function toScreen(value: number): number {
  return screen[Math.min(4096, Math.max(0, Math.round(value * 2048)))] ?? 0;
}

function clamp(value: number): number {
  return Math.min(Math.max(value, 0), 1);
}
