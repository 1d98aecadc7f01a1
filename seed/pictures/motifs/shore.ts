import { course, from, type Level, type Motif, type Sheet, type Spot } from '../pen';
import { along, bending, headingAt, stem } from './growth';
import { rings, swell } from './water';

type Lump = Readonly<{ at: Spot; radius: number }>;

/** Round places that do not overlap, the large ones first. */
export function packed(
  { wide, high, chance }: Sheet,
  sizes: Readonly<{ most: number; least: number; tries: number; apart: number }>,
): Lump[] {
  const lumps: Lump[] = [];
  for (let turn = 0; turn < sizes.tries; turn += 1) {
    const ease = (turn / sizes.tries) ** 0.7;
    const radius = (sizes.most + (sizes.least - sizes.most) * ease) * chance.between(0.8, 1.15);
    const at: Spot = [chance.between(-30, wide + 30), chance.between(-30, high + 30)];
    const free = lumps.every(
      (lump) =>
        Math.hypot(lump.at[0] - at[0], lump.at[1] - at[1]) > (lump.radius + radius) * sizes.apart,
    );
    if (free) lumps.push({ at, radius });
  }
  return lumps;
}

function limpet(sheet: Sheet, at: Spot, radius: number): void {
  const { pen, chance } = sheet;
  pen.dome(
    at,
    [radius, radius * 0.9],
    [
      { height: 0.95, zone: 0.6 },
      { height: 0.34, zone: 0.2 },
    ],
  );
  const top: Spot = [at[0] - radius * 0.12, at[1] - radius * 0.1];
  const ribs = 22;
  for (let rib = 0; rib < ribs; rib += 1) {
    const turn = (rib / ribs) * 360 + chance.about(3);
    const [ax, ay] = from(top, turn, radius * 0.16);
    const [bx, by] = from(at, turn, radius * 0.92);
    pen.line(`M${ax} ${ay}L${bx} ${by}`, radius * 0.035, { height: 0.4, zone: 0.5 });
  }
  pen.dome(
    top,
    [radius * 0.16, radius * 0.15],
    [
      { height: 1, zone: 0.8 },
      { height: 0.8, zone: 0.6 },
    ],
  );
}

/** Bull kelp that streams with the tide, limpets at its foot. */
export const bullKelp: Motif = {
  key: 'kelp',
  title: 'Bull Kelp',
  draw: (sheet) => {
    const { pen, wide, high } = sheet;
    swell(sheet, { top: -20, foot: high + 30, step: 64, rise: 20, long: 780 }, { height: 0.34 });
    const plants = Math.max(1, Math.round(wide / 800));
    for (let plant = 0; plant < plants; plant += 1) {
      const left = (wide * plant) / plants;
      const span = wide / plants;
      const foot: Spot = [left + span * 0.12, high * 1.04];
      const stalk = bending(foot, -84, high * 0.78, [-16, 78]);
      const head = stalk.at(-1) ?? foot;
      const way = headingAt(stalk, stalk.length - 1);
      for (let blade = 0; blade < 8; blade += 1) {
        const turn = way - 22 + blade * 14.5;
        const long = span * (0.86 - Math.abs(blade - 3) * 0.055);
        ribbon(sheet, streaming(head, turn, long, blade), 66 - Math.abs(blade - 3.5) * 4);
      }
      stem(pen, stalk, [12, 30], { height: 0.8, zone: 1 });
      pen.dome(
        from(head, way, 14),
        [66, 50],
        [
          { height: 1, zone: 1 },
          { height: 0.5, zone: 1 },
        ],
        way,
      );
    }
    const lumps = [0.08, 0.29, 0.47, 0.7, 0.9];
    for (const [at, share] of lumps.entries()) {
      const radius = 46 + ((at * 37) % 38);
      limpet(sheet, [wide * share, high - 40 - ((at * 53) % 46)], radius);
    }
  },
};

/** The middle of a blade that streams and waves in the current. */
function streaming(head: Spot, turn: number, long: number, order: number): Spot[] {
  const spots: Spot[] = [];
  const phase = order * 1.3;
  for (let step = 0; step <= 14; step += 1) {
    const share = step / 14;
    const out = from(head, turn * (1 - share * 0.3) + share * 26, long * share);
    const sway = Math.sin(share * 7.2 + phase) * long * 0.045 * share;
    spots.push(from(out, turn + 90, sway));
  }
  return spots;
}

function ribbon({ pen }: Sheet, spine: readonly Spot[], wide: number): void {
  const left: Spot[] = [];
  const right: Spot[] = [];
  spine.forEach((spot, step) => {
    const share = step / (spine.length - 1);
    const swellAt =
      Math.sin(Math.PI * Math.min(1, 0.12 + share * 0.88)) * (1 + 0.22 * Math.sin(step * 2.1));
    const way = headingAt(spine, step);
    left.push(from(spot, way - 90, (wide / 2) * swellAt));
    right.unshift(from(spot, way + 90, (wide / 2) * swellAt));
  });
  const middle = along(spine, 0.5);
  const way = headingAt(spine, 6);
  const outline = `${course(left)}L${course(right).slice(1)}Z`;
  pen.line(outline, 7, { height: 0.16, zone: 0 });
  pen.lean(
    outline,
    [from(middle, way - 90, wide / 2), from(middle, way + 90, wide / 2)],
    { height: 0.86, zone: 1 },
    { height: 0.5, zone: 1 },
  );
  pen.line(course(spine.slice(0, -1)), 4, { height: 0.5, zone: 1 });
}

/** Stones of the river bed, sorted by the water. */
export const riverStones: Motif = {
  key: 'stones',
  title: 'River Stones',
  draw: (sheet) => {
    const { pen, chance } = sheet;
    swell(
      sheet,
      { top: -20, foot: sheet.high + 30, step: 40, rise: 12, long: 520 },
      { height: 0.22 },
    );
    for (const { at, radius } of packed(sheet, {
      most: 170,
      least: 13,
      tries: 9000,
      apart: 0.93,
    })) {
      const turn = chance.between(-24, 24);
      const flat = chance.between(0.76, 0.94);
      const zone = chance.between(0, 1) > 0.66 ? 1 : chance.between(0, 0.25);
      const top = 0.46 + Math.min(0.52, radius / 280);
      pen.dome(
        at,
        [radius, radius * flat],
        [
          { height: top, zone },
          { height: 0.2, zone },
        ],
        turn,
      );
      if (radius > 80 && chance.between(0, 1) > 0.4)
        vein(sheet, at, radius, { height: top * 0.86, zone: 1 - zone });
    }
  },
};

/** A ring of another stone about one end of a pebble. */
function vein(sheet: Sheet, at: Spot, radius: number, level: Level): void {
  const { pen, chance } = sheet;
  const turn = chance.between(0, 360);
  const spots: Spot[] = [];
  for (let step = -4; step <= 4; step += 1) {
    const across = step / 4.6;
    const bow = 0.3 - 0.24 * across * across;
    spots.push(from(from(at, turn, radius * bow), turn + 90, radius * 0.8 * across));
  }
  pen.line(course(spots), radius * chance.between(0.045, 0.09), level);
}

/** The rings where they cross. */
export const rainOnTheInlet: Motif = {
  key: 'rain',
  title: 'Rain on the Inlet',
  draw: (sheet) => {
    const { pen, wide, high, chance } = sheet;
    swell(sheet, { top: 0, foot: high + 20, step: 70, rise: 8, long: 1100 }, { height: 0.33 });
    const places: [number, number, number][] = [
      [0.3, 0.3, 330],
      [0.78, 0.56, 400],
      [0.24, 0.8, 270],
      [0.64, 0.1, 170],
      [0.94, 0.92, 210],
      [0.04, 0.52, 150],
      [0.52, 0.94, 120],
    ];
    const spread = Math.max(1, Math.round(wide / high));
    for (let tile = 0; tile < spread; tile += 1) {
      for (const [x, y, reach] of places) {
        const at: Spot = [
          ((tile + x) / spread) * wide + chance.about(20),
          y * high + chance.about(20),
        ];
        rings(
          sheet,
          at,
          { from: 26, to: reach, step: 37, flat: 0.9 },
          { height: 0.82, zone: 0.55 },
        );
        pen.dome(
          at,
          [19, 17],
          [
            { height: 1, zone: 1 },
            { height: 0.4, zone: 1 },
          ],
        );
      }
    }
    for (let drop = 0; drop < (wide * high) / 26000; drop += 1) {
      const at: Spot = [chance.between(0, wide), chance.between(0, high)];
      const [bx, by] = from(at, 106, chance.between(40, 110));
      pen.line(`M${at[0]} ${at[1]}L${bx} ${by}`, 4.5, { height: 0.72, zone: 0.9 });
    }
  },
};

/** Barnacles on the third pile from the end. */
export const barnacleField: Motif = {
  key: 'barnacle',
  title: 'Barnacle Field',
  draw: (sheet) => {
    const { pen, chance } = sheet;
    for (const { at, radius } of packed(sheet, { most: 128, least: 18, tries: 2600, apart: 0.9 })) {
      const turn = chance.between(0, 60);
      pen.dome(
        at,
        [radius, radius * 0.96],
        [
          { height: 0.98, zone: 0.1 },
          { height: 0.26, zone: 0.35 },
        ],
      );
      const plates = radius > 40 ? 6 : 5;
      for (let plate = 0; plate < plates; plate += 1) {
        const way = turn + (plate / plates) * 360;
        const [ax, ay] = from(at, way, radius * 0.24);
        const [bx, by] = from(at, way + chance.about(6), radius * 0.97);
        pen.line(`M${ax} ${ay}L${bx} ${by}`, Math.max(2.5, radius * 0.06), {
          height: 0.3,
          zone: 0.4,
        });
        for (const ridge of [0.28, 0.5, 0.72]) {
          const [cx, cy] = from(at, way + (360 / plates) * ridge, radius * 0.42);
          const [dx, dy] = from(at, way + (360 / plates) * ridge, radius * 0.93);
          pen.line(`M${cx} ${cy}L${dx} ${dy}`, Math.max(1.2, radius * 0.022), {
            height: 0.5,
            zone: 0.2,
          });
        }
      }
      pen.dome(
        at,
        [radius * 0.38, radius * 0.3],
        [
          { height: 0.04, zone: 1 },
          { height: 0.3, zone: 1 },
        ],
        turn,
      );
      pen.dome(
        at,
        [radius * 0.27, radius * 0.15],
        [
          { height: 0.5, zone: 0.8 },
          { height: 0.18, zone: 1 },
        ],
        turn,
      );
      const [sx, sy] = from(at, turn, radius * 0.25);
      const [tx, ty] = from(at, turn + 180, radius * 0.25);
      pen.line(`M${sx} ${sy}L${tx} ${ty}`, Math.max(1.5, radius * 0.035), {
        height: 0.08,
        zone: 1,
      });
    }
  },
};
