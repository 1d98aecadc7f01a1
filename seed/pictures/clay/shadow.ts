import { emptyField, soften, type Field } from './field';
import type { Form } from './form';

/** The shadow a piece throws, as RGBA bytes: on the wall to the lower right, or about its foot. */
export function shadowOf(form: Form): Buffer {
  const { wide, high } = form;
  const size = Math.max(wide, high);
  const near = soften(shifted(form.mask, size * 0.004, size * 0.006), size * 0.005);
  const far = form.stands
    ? soften(pool(form), size * 0.018)
    : soften(shifted(form.mask, size * 0.014, size * 0.022), size * 0.017);
  const bytes = Buffer.alloc(wide * high * 4);
  for (let at = 0; at < wide * high; at += 1) {
    const close = form.stands ? 0 : (near.at[at] ?? 0) * 0.42;
    const dark = Math.min(0.8, close + (far.at[at] ?? 0) * (form.stands ? 0.6 : 0.34));
    bytes[at * 4] = 46;
    bytes[at * 4 + 1] = 32;
    bytes[at * 4 + 2] = 24;
    bytes[at * 4 + 3] = Math.round(dark * 255);
  }
  return bytes;
}

function shifted({ wide, high, at }: Field, right: number, down: number): Field {
  const moved = emptyField(wide, high);
  const [dx, dy] = [Math.round(right), Math.round(down)];
  for (let y = dy; y < high; y += 1) {
    for (let x = dx; x < wide; x += 1) moved.at[y * wide + x] = at[(y - dy) * wide + x - dx] ?? 0;
  }
  return moved;
}

/** The dark about the foot of what stands, drawn out to the right, away from the light. */
function pool(form: Form): Field {
  const { wide, high, mask } = form;
  const dark = emptyField(wide, high);
  let foot = high - 1;
  const filled = (y: number) => {
    for (let x = 0; x < wide; x += 1) if ((mask.at[y * wide + x] ?? 0) > 0.5) return true;
    return false;
  };
  while (foot > 0 && !filled(foot)) foot -= 1;
  const level = Math.max(0, foot - Math.round(high * 0.035));
  let left = wide;
  let right = 0;
  for (let x = 0; x < wide; x += 1) {
    if ((mask.at[level * wide + x] ?? 0) <= 0.5) continue;
    left = Math.min(left, x);
    right = Math.max(right, x);
  }
  const middle = (left + right) / 2 + wide * 0.035;
  const reach = (right - left) / 2 + wide * 0.045;
  const flat = high * 0.032;
  const centre = foot - flat * 0.55;
  for (let y = 0; y < high; y += 1) {
    for (let x = 0; x < wide; x += 1) {
      const out = Math.hypot((x - middle) / reach, (y - centre) / flat);
      if (out < 1) dark.at[y * wide + x] = 1;
    }
  }
  return dark;
}
