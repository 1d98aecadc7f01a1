import { chanceOf } from '../chance';

/** A sheet of numbers, row by row: heights, thicknesses, shares of a glaze. */
export type Field = Readonly<{ wide: number; high: number; at: Float32Array }>;

/** A field of zeros. */
export function emptyField(wide: number, high: number): Field {
  return { wide, high, at: new Float32Array(wide * high) };
}

/** Softens a field as a damp finger would; box blurs one over another stand for a bell curve. */
export function soften(field: Field, radius: number): Field {
  return radius >= 3.5
    ? enlarged(boxed(shrunk(field), radius / shrinking), field)
    : boxed(field, radius);
}

/** Wide softening sees no fine detail, so it is done on a smaller field. */
const shrinking = 3;

function shrunk(field: Field): Field {
  const small = emptyField(Math.ceil(field.wide / shrinking), Math.ceil(field.high / shrinking));
  for (let y = 0; y < small.high; y += 1) {
    for (let x = 0; x < small.wide; x += 1) small.at[y * small.wide + x] = blockMean(field, x, y);
  }
  return small;
}

function blockMean({ wide, high, at }: Field, column: number, row: number): number {
  let sum = 0;
  for (let down = 0; down < shrinking; down += 1) {
    const start = Math.min(row * shrinking + down, high - 1) * wide;
    for (let right = 0; right < shrinking; right += 1) {
      sum += at[start + Math.min(column * shrinking + right, wide - 1)] ?? 0;
    }
  }
  return sum / (shrinking * shrinking);
}

function enlarged(small: Field, { wide, high }: Field): Field {
  const large = emptyField(wide, high);
  const column = new Int32Array(wide);
  const right = new Float32Array(wide);
  for (let x = 0; x < wide; x += 1) {
    const from = Math.min(Math.max((x + 0.5) / shrinking - 0.5, 0), small.wide - 1.001);
    column[x] = Math.floor(from);
    right[x] = from - Math.floor(from);
  }
  for (let y = 0; y < high; y += 1) {
    const from = Math.min(Math.max((y + 0.5) / shrinking - 0.5, 0), small.high - 1.001);
    const row = Math.floor(from) * small.wide;
    const down = from - Math.floor(from);
    for (let x = 0; x < wide; x += 1) {
      const knot = row + (column[x] ?? 0);
      const share = right[x] ?? 0;
      const above = mix(small.at[knot] ?? 0, small.at[knot + 1] ?? 0, share);
      const under = knot + small.wide;
      const below = mix(small.at[under] ?? 0, small.at[under + 1] ?? 0, share);
      large.at[y * wide + x] = mix(above, below, down);
    }
  }
  return large;
}

function boxed(field: Field, radius: number): Field {
  const box = Math.max(1, Math.round(radius));
  const rounds = box < 3 ? 2 : 3;
  let now: Float32Array = field.at;
  for (let round = 0; round < rounds; round += 1) {
    now = alongColumns(alongRows(now, field, box), field, box);
  }
  return { ...field, at: now };
}

function alongRows(from: Float32Array, { wide, high }: Field, radius: number): Float32Array {
  const to = new Float32Array(from.length);
  const share = 1 / (2 * radius + 1);
  for (let y = 0; y < high; y += 1) {
    const start = y * wide;
    const first = from[start] ?? 0;
    const last = from[start + wide - 1] ?? 0;
    let sum = first * radius;
    for (let x = 0; x < radius; x += 1) sum += from[start + Math.min(x, wide - 1)] ?? 0;
    for (let x = 0; x < wide; x += 1) {
      const coming = x + radius;
      const going = x - radius;
      sum += coming < wide ? (from[start + coming] ?? 0) : last;
      to[start + x] = sum * share;
      sum -= going > 0 ? (from[start + going] ?? 0) : first;
    }
  }
  return to;
}

function alongColumns(from: Float32Array, { wide, high }: Field, radius: number): Float32Array {
  const to = new Float32Array(from.length);
  const share = 1 / (2 * radius + 1);
  const sums = new Float32Array(wide);
  const rowStart = (y: number) => Math.min(Math.max(y, 0), high - 1) * wide;
  for (let y = -radius; y < radius; y += 1) {
    const start = rowStart(y);
    for (let x = 0; x < wide; x += 1) sums[x] = (sums[x] ?? 0) + (from[start + x] ?? 0);
  }
  for (let y = 0; y < high; y += 1) {
    const coming = rowStart(y + radius);
    const going = rowStart(y - radius);
    const here = y * wide;
    for (let x = 0; x < wide; x += 1) {
      const sum = (sums[x] ?? 0) + (from[coming + x] ?? 0);
      to[here + x] = sum * share;
      sums[x] = sum - (from[going + x] ?? 0);
    }
  }
  return to;
}

/** Soft unevenness from −1 to 1, in patches of about `patch` pixels. */
export function unevenness(wide: number, high: number, patch: number, seed: string): Field {
  const chance = chanceOf(seed);
  const across = Math.ceil(wide / patch) + 2;
  const down = Math.ceil(high / patch) + 2;
  const knots = Float32Array.from({ length: across * down }, () => chance.between(-1, 1));
  const field = emptyField(wide, high);
  const ease = (t: number) => t * t * (3 - 2 * t);
  for (let y = 0; y < high; y += 1) {
    const gy = y / patch;
    const row = Math.floor(gy);
    const ty = ease(gy - row);
    for (let x = 0; x < wide; x += 1) {
      const gx = x / patch;
      const column = Math.floor(gx);
      const tx = ease(gx - column);
      const knot = row * across + column;
      const above = mix(knots[knot] ?? 0, knots[knot + 1] ?? 0, tx);
      const below = mix(knots[knot + across] ?? 0, knots[knot + across + 1] ?? 0, tx);
      field.at[y * wide + x] = mix(above, below, ty);
    }
  }
  return field;
}

/** A field's value between its pixels; outside, the nearest one. */
export function sample({ wide, high, at }: Field, x: number, y: number): number {
  const cx = Math.min(Math.max(x, 0), wide - 1.001);
  const cy = Math.min(Math.max(y, 0), high - 1.001);
  const column = Math.floor(cx);
  const row = Math.floor(cy);
  const knot = row * wide + column;
  const above = mix(at[knot] ?? 0, at[knot + 1] ?? 0, cx - column);
  const below = mix(at[knot + wide] ?? 0, at[knot + wide + 1] ?? 0, cx - column);
  return mix(above, below, cy - row);
}

/** Between two numbers. */
export function mix(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}

/** Zero below `low`, one above `high`, an even rise between. */
export function rise(low: number, high: number, value: number): number {
  const t = Math.min(Math.max((value - low) / (high - low), 0), 1);
  return t * t * (3 - 2 * t);
}
