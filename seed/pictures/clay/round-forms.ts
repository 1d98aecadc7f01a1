import { emptyField, rise, soften } from './field';
import { maskOf, type Form } from './form';

/** Half the width at a height from 0 (mouth) to 1 (foot), as a share of the picture's width. */
type Profile = (down: number) => number;

type Turned = Readonly<{
  wide: number;
  high: number;
  topY: number;
  footY: number;
  /** How far the circles are seen from above, as a share of half their width. */
  tilt: number;
  profile: Profile;
  reliefPx: number;
  sheetWide: number;
}>;

/** A lamp: a turned and carved base, brass neck and a linen shade. */
export async function lampForm(longPx: number): Promise<Form> {
  const high = Math.round(longPx);
  const wide = Math.round(longPx * 0.66);
  const profile: Profile = (down) =>
    0.085 + 0.24 * Math.sin(Math.PI * Math.min(1, 0.1 + down * 0.83)) ** 0.8 * (0.78 + down * 0.3);
  const [topY, footY] = [high * 0.5, high * 0.92];
  const form = await turned({
    ...{ wide, high, topY, footY, tilt: 0.12, profile },
    ...{ reliefPx: wide * 0.017, sheetWide: 1700 },
  });
  const middle = wide / 2;
  const [shadeTop, shadeFoot] = [high * 0.06, high * 0.43];
  const [topHalf, footHalf] = [wide * 0.28, wide * 0.46];
  const shade =
    `M${middle - topHalf} ${shadeTop}L${middle + topHalf} ${shadeTop}` +
    `L${middle + footHalf} ${shadeFoot}` +
    `A${footHalf} ${footHalf * 0.1} 0 0 1 ${middle - footHalf} ${shadeFoot}Z`;
  const neck = wide * 0.016;
  return {
    ...form,
    under: () =>
      `<defs><linearGradient id="linen"><stop stop-color="#d9cdb6"/>` +
      `<stop offset=".3" stop-color="#fbf4e4"/><stop offset=".62" stop-color="#f1e6cf"/>` +
      `<stop offset="1" stop-color="#c3b397"/></linearGradient>` +
      `<linearGradient id="brass"><stop stop-color="#7a6136"/><stop offset=".4" ` +
      `stop-color="#d9bf84"/><stop offset="1" stop-color="#5c4726"/></linearGradient>` +
      `<radialGradient id="glow" cy=".62" r=".62"><stop stop-color="#fff3cf" ` +
      `stop-opacity=".9"/><stop offset="1" stop-color="#fff3cf" stop-opacity="0"/>` +
      `</radialGradient></defs>` +
      `<rect x="${middle - neck}" y="${shadeFoot}" width="${neck * 2}" ` +
      `height="${topY - shadeFoot + 12}" fill="url(#brass)"/>` +
      `<path d="${shade}" fill="url(#linen)"/><path d="${shade}" fill="url(#glow)"/>` +
      `<path d="M${middle - footHalf} ${shadeFoot}A${footHalf} ${footHalf * 0.1} 0 0 0 ` +
      `${middle + footHalf} ${shadeFoot}" fill="none" stroke="#b9a888" stroke-width="2"/>`,
    over: () =>
      `<rect x="${middle - neck * 1.9}" y="${topY - neck}" width="${neck * 3.8}" ` +
      `height="${neck * 1.6}" rx="2" fill="#b3965a"/>`,
  };
}

/** A planter: a flared pot with a heavy rim, seen from a little above. */
export async function planterForm(longPx: number): Promise<Form> {
  const wide = Math.round(longPx);
  const high = Math.round(longPx * 0.95);
  const profile: Profile = (down) => {
    const rim = down < 0.1 ? 0.018 : 0;
    return 0.44 - 0.125 * down ** 1.35 + rim;
  };
  const [topY, footY] = [high * 0.2, high * 0.84];
  const form = await turned({
    ...{ wide, high, topY, footY, tilt: 0.23, profile },
    ...{ reliefPx: wide * 0.016, sheetWide: 1900 },
  });
  const earth = mouth(wide / 2, topY, profile(0) * wide, 0.23);
  return { ...form, over: ({ thin }) => earth(thin, '#3a2e25', '#241c16') };
}

/** A bowl on a small foot, its inside open to the eye. */
export async function bowlForm(longPx: number): Promise<Form> {
  const wide = Math.round(longPx);
  const high = Math.round(longPx * 0.66);
  const profile: Profile = (down) =>
    down > 0.93 ? 0.18 : 0.47 * Math.sqrt(Math.max(0.02, 1 - (down * 0.965) ** 2.4));
  const [topY, footY] = [high * 0.22, high * 0.84];
  const form = await turned({
    ...{ wide, high, topY, footY, tilt: 0.25, profile },
    ...{ reliefPx: wide * 0.013, sheetWide: 2300 },
  });
  const inside = mouth(wide / 2, topY, profile(0) * wide, 0.25);
  return { ...form, over: ({ pool, thin }) => inside(thin, thin, pool) };
}

function mouth(middle: number, y: number, half: number, tilt: number) {
  return (rim: string, inside: string, deep: string): string =>
    `<defs><linearGradient id="in" x1="0" y1="0" x2=".5" y2="1"><stop stop-color="${deep}"/>` +
    `<stop offset=".55" stop-color="${deep}"/><stop offset="1" stop-color="${inside}"/>` +
    `</linearGradient></defs>` +
    `<ellipse cx="${middle}" cy="${y}" rx="${half}" ry="${half * tilt}" fill="${rim}"/>` +
    `<ellipse cx="${middle}" cy="${y}" rx="${half}" ry="${half * tilt}" fill="#fff" ` +
    `opacity=".18"/>` +
    `<ellipse cx="${middle + 1}" cy="${y + 3}" rx="${half * 0.945}" ry="${half * tilt * 0.9}" ` +
    `fill="url(#in)"/>`;
}

async function turned(shape: Turned): Promise<Form> {
  const { wide, high, topY, footY, tilt, profile } = shape;
  const middle = wide / 2;
  const tall = footY - topY;
  const half = (y: number) => profile(Math.min(Math.max((y - topY) / tall, 0), 1)) * wide;
  const mask = await maskOf(outlineOf(shape, half), wide, high);
  const leanX = emptyField(wide, high);
  const leanY = emptyField(wide, high);
  const calm = emptyField(wide, high);
  for (let y = 0; y < high; y += 1) {
    for (let x = 0; x < wide; x += 1) {
      const reach = half(y);
      const across = Math.min(Math.max((x - middle) / reach, -0.995), 0.995);
      const level = y - reach * tilt * Math.sqrt(1 - across * across);
      const down = (level - topY) / tall;
      calm.at[y * wide + x] = rise(0.03, 0.12, down) * (1 - rise(0.88, 0.95, down));
      const swell = (half(level + 3) - half(level - 3)) / 6;
      leanX.at[y * wide + x] = across;
      leanY.at[y * wide + x] = -swell * 0.75 + tilt * 0.4 * (y < topY ? 1 : 0);
    }
  }
  return {
    wide,
    high,
    mask,
    leanX,
    leanY: soften(leanY, 3),
    bulk: emptyField(wide, high),
    sheet: { wide: shape.sheetWide, high: 1000 },
    place: (x, y) => {
      const reach = half(y);
      const across = Math.min(Math.max((x - middle) / reach, -1), 1);
      const level = y - reach * tilt * Math.sqrt(1 - across * across);
      return [0.5 + Math.asin(across) / Math.PI, (level - topY) / tall];
    },
    calm,
    stands: true,
    reliefPx: shape.reliefPx,
  };
}

function outlineOf(shape: Turned, half: (y: number) => number): string {
  const { wide, topY, footY, tilt } = shape;
  const middle = wide / 2;
  const left: string[] = [];
  const right: string[] = [];
  for (let step = 0; step <= 60; step += 1) {
    const y = topY + ((footY - topY) * step) / 60;
    left.unshift(`L${middle - half(y)} ${y}`);
    right.push(`L${middle + half(y)} ${y}`);
  }
  const mouthHalf = half(topY);
  const footHalf = half(footY);
  return (
    `<path d="M${middle - mouthHalf} ${topY}A${mouthHalf} ${mouthHalf * tilt} 0 0 1 ` +
    `${middle + mouthHalf} ${topY}${right.join('')}A${footHalf} ${footHalf * tilt} 0 0 1 ` +
    `${middle - footHalf} ${footY}${left.join('')}Z"/>`
  );
}
