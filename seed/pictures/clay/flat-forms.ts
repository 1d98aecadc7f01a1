import type { Chance } from '../chance';
import { emptyField, mix, rise, soften, type Field } from './field';
import { fieldBy, maskOf, type Form } from './form';
import { course, type Spot } from '../pen';

/** Room about a slab: a little at the upper left, more where its shadow falls. */
const rooms = { near: 0.012, far: 0.062 } as const;

type Slab = Readonly<{ x: number; y: number; wide: number; high: number }>;

/** A square tile or an oblong plaque; a plaque that is taller than wide has an arched top. */
export async function slabForm(
  longPx: number,
  proportion: number,
  chance: Chance,
  arched: boolean,
): Promise<Form> {
  const inner = longPx * (1 - rooms.near - rooms.far);
  const slabWide = proportion >= 1 ? inner : inner * proportion;
  const slabHigh = proportion >= 1 ? inner / proportion : inner;
  const near = longPx * rooms.near;
  const slab = { x: near, y: near, wide: slabWide, high: slabHigh };
  const wide = Math.round(slabWide + near + longPx * rooms.far);
  const high = Math.round(slabHigh + near + longPx * rooms.far);
  const outline = `<path d="${slabOutline(slab, chance, arched)}"/>`;
  return flat({ wide, high, slab, mask: await maskOf(outline, wide, high) });
}

/** A relief of several parts, set with fine joints that bend as the clay was cut. */
export async function panelForm(longPx: number, proportion: number, chance: Chance): Promise<Form> {
  const inner = longPx * (1 - rooms.near - rooms.far);
  const slabWide = proportion >= 1 ? inner : inner * proportion;
  const slabHigh = proportion >= 1 ? inner / proportion : inner;
  const near = longPx * rooms.near;
  const slab = { x: near, y: near, wide: slabWide, high: slabHigh };
  const wide = Math.round(slabWide + near + longPx * rooms.far);
  const high = Math.round(slabHigh + near + longPx * rooms.far);
  const columns = Math.max(1, Math.round(slabWide / (inner / 3.2)));
  const rows = Math.max(1, Math.round(slabHigh / (inner / 3.2)));
  const cuts: string[] = [];
  for (let column = 1; column < columns; column += 1) {
    cuts.push(joint(slab, column / columns, 'down', chance));
  }
  for (let row = 1; row < rows; row += 1) cuts.push(joint(slab, row / rows, 'across', chance));
  const width = Math.max(3, longPx * 0.006);
  const outline =
    `<path d="${slabOutline(slab, chance, false)}"/>` +
    `<path d="${cuts.join('')}" fill="none" stroke="#000" stroke-width="${width}"/>`;
  return flat({ wide, high, slab, mask: await maskOf(outline, wide, high) });
}

/** A round platter seen from above: a shallow well and a lifted rim. */
export async function platterForm(longPx: number, chance: Chance): Promise<Form> {
  const size = Math.round(longPx);
  const middle = size * 0.475;
  const radius = size * 0.463;
  const spots: Spot[] = [];
  for (let turn = 0; turn < 24; turn += 1) {
    const angle = (turn / 24) * Math.PI * 2;
    const reach = radius * (1 + chance.about(0.004));
    spots.push([middle + Math.cos(angle) * reach, middle + Math.sin(angle) * reach]);
  }
  const mask = await maskOf(`<path d="${course(spots, true)}"/>`, size, size);
  const slab = {
    x: middle - radius,
    y: middle - radius,
    wide: radius * 2,
    high: radius * 2,
  };
  const made = flat({ wide: size, high: size, slab, mask });
  const well = fieldBy(size, size, (x, y) => {
    const out = Math.hypot(x - middle, y - middle) / radius;
    const lip = rise(0.86, 0.93, out) * (1 - rise(0.965, 1.0, out));
    return size * (0.03 * rise(0.35, 0.86, out) + 0.022 * lip);
  });
  const bulk = { ...made.bulk, at: made.bulk.at.map((value, at) => value + (well.at[at] ?? 0)) };
  const calm = fieldBy(size, size, (x, y) => {
    const out = Math.hypot(x - middle, y - middle) / radius;
    return 1 - rise(0.8, 0.9, out);
  });
  return { ...made, bulk, calm };
}

function flat(made: Readonly<{ wide: number; high: number; slab: Slab; mask: Field }>): Form {
  const { wide, high, slab, mask } = made;
  const size = Math.max(slab.wide, slab.high);
  const rounding = soften(mask, size * 0.006);
  const wider = soften(mask, size * 0.014);
  const bulk = emptyField(wide, high);
  for (let at = 0; at < bulk.at.length; at += 1) {
    bulk.at[at] = size * 0.03 * mix(rounding.at[at] ?? 0, wider.at[at] ?? 0, 0.5);
  }
  const short = Math.min(slab.wide, slab.high) / 1000;
  return {
    wide,
    high,
    mask,
    leanX: emptyField(wide, high),
    leanY: emptyField(wide, high),
    bulk,
    sheet: { wide: slab.wide / short, high: slab.high / short },
    place: (x, y) => [(x - slab.x) / slab.wide, (y - slab.y) / slab.high],
    calm: mask,
    stands: false,
    reliefPx: Math.min(slab.wide, slab.high) * 0.04,
  };
}

/** The slab's edge: straight as a hand cuts it, its corners eased, its top arched or not. */
function slabOutline(slab: Slab, chance: Chance, arched: boolean): string {
  const { x, y, wide, high } = slab;
  const short = Math.min(wide, high);
  const corner = short * 0.018;
  const arch = arched ? wide * 0.2 : corner;
  const spots: Spot[] = [];
  const round = (middle: Spot, radii: Spot, fromTurn: number, steps: number) => {
    for (let step = 0; step <= steps; step += 1) {
      const turn = ((fromTurn + (90 * step) / steps) * Math.PI) / 180;
      spots.push([middle[0] + Math.cos(turn) * radii[0], middle[1] + Math.sin(turn) * radii[1]]);
    }
  };
  const shoulder = arched ? wide / 2 : corner;
  round([x + shoulder, y + arch], [shoulder, arch], 180, arched ? 24 : 5);
  edge(spots, [x + wide - shoulder, y]);
  round([x + wide - shoulder, y + arch], [shoulder, arch], 270, arched ? 24 : 5);
  edge(spots, [x + wide, y + high - corner]);
  round([x + wide - corner, y + high - corner], [corner, corner], 0, 5);
  edge(spots, [x + corner, y + high]);
  round([x + corner, y + high - corner], [corner, corner], 90, 5);
  edge(spots, [x, y + arch]);
  const waves = [2, 3, 5, 7].map((times) => ({ times, phase: chance.between(0, 6.3) }));
  const middle: Spot = [x + wide / 2, y + high / 2];
  const cut = spots.map(([px, py]): Spot => {
    const turn = Math.atan2(py - middle[1], px - middle[0]);
    const slip = waves.reduce((sum, wave) => sum + Math.sin(turn * wave.times + wave.phase), 0);
    const share = 1 + slip * 0.0011;
    return [middle[0] + (px - middle[0]) * share, middle[1] + (py - middle[1]) * share];
  });
  return `M${cut.map(([px, py]) => `${Math.round(px * 10) / 10} ${Math.round(py * 10) / 10}`).join('L')}Z`;
}

function edge(spots: Spot[], to: Spot): void {
  const start = spots.at(-1) ?? to;
  for (let step = 1; step <= 16; step += 1) {
    const share = step / 16;
    spots.push([start[0] + (to[0] - start[0]) * share, start[1] + (to[1] - start[1]) * share]);
  }
}

function joint(slab: Slab, share: number, way: 'down' | 'across', chance: Chance): string {
  const spots: Spot[] = [];
  const bend = Math.min(slab.wide, slab.high) * 0.009;
  for (let step = -1; step <= 5; step += 1) {
    const along = step / 4;
    const off = chance.about(bend);
    spots.push(
      way === 'down'
        ? [slab.x + slab.wide * share + off, slab.y + slab.high * along]
        : [slab.x + slab.wide * along, slab.y + slab.high * share + off],
    );
  }
  return course(spots);
}
