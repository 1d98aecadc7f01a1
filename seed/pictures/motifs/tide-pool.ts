import { course, from, outlined, type Motif, type Sheet, type Spot } from '../pen';
import { packed } from './shore';

function star(sheet: Sheet, at: Spot, reach: number, turn: number): void {
  const { pen, chance } = sheet;
  const spots: Spot[] = [];
  const arms: number[] = [];
  for (let arm = 0; arm < 5; arm += 1) {
    const way = turn + arm * 72 + chance.about(4);
    arms.push(way);
    const tip = reach * chance.between(0.92, 1.08);
    spots.push(from(from(at, way, reach * 0.3), way - 90, reach * 0.2));
    spots.push(from(from(at, way, reach * 0.68), way - 90, reach * 0.15));
    spots.push(from(from(at, way, tip * 0.96), way - 90, reach * 0.05));
    spots.push(from(at, way + 3, tip));
    spots.push(from(from(at, way, tip * 0.95), way + 90, reach * 0.06));
    spots.push(from(from(at, way, reach * 0.68), way + 90, reach * 0.15));
    spots.push(from(from(at, way, reach * 0.3), way + 90, reach * 0.2));
  }
  pen.line(course(spots, true), 26, { height: 0.12 });
  pen.fill(course(spots, true), { height: 0.55, zone: 1 });
  for (const way of arms) {
    const ridge = from(at, way, reach * 0.44);
    pen.dome(
      ridge,
      [reach * 0.56, reach * 0.13],
      [
        { height: 0.92, zone: 1 },
        { height: 0.55, zone: 1 },
      ],
      way,
    );
  }
  pen.dome(
    at,
    [reach * 0.3, reach * 0.3],
    [
      { height: 0.96, zone: 1 },
      { height: 0.6, zone: 1 },
    ],
  );
  for (const way of arms) {
    for (let row = -2; row <= 2; row += 1) {
      for (let bump = 0; bump < 13 - Math.abs(row) * 2; bump += 1) {
        const out = reach * (0.1 + bump * 0.068);
        const taper = 1 - (out / reach) * 0.68;
        const place = from(from(at, way, out), way + 90, row * reach * 0.068 * taper);
        const size = reach * (row === 0 ? 0.026 : 0.019) * (0.6 + taper * 0.5);
        pen.dome(
          place,
          [size, size],
          [
            { height: 1, zone: 0.35 },
            { height: 0.6, zone: 0.6 },
          ],
        );
      }
    }
  }
}

function anemone(sheet: Sheet, at: Spot, size: number): void {
  const { pen } = sheet;
  pen.dome(
    at,
    [size * 0.9, size * 0.9],
    [
      { height: 0.5, zone: 0.3 },
      { height: 0.24, zone: 0.3 },
    ],
  );
  for (const [count, reach, height] of [
    [22, 1, 0.66],
    [17, 0.74, 0.8],
    [11, 0.5, 0.92],
  ] as const) {
    for (let arm = 0; arm < count; arm += 1) {
      const turn = (arm / count) * 360 + reach * 50;
      const tip = from(at, turn, size * reach);
      const root = from(at, turn, size * 0.24);
      pen.line(`M${root[0]} ${root[1]}L${tip[0]} ${tip[1]}`, size * 0.12, { height, zone: 0.3 });
      pen.dome(
        tip,
        [size * 0.085, size * 0.085],
        [
          { height: height + 0.1, zone: 0.7 },
          { height: height - 0.2, zone: 0.7 },
        ],
      );
    }
  }
  pen.dome(
    at,
    [size * 0.2, size * 0.16],
    [
      { height: 0.1, zone: 0.5 },
      { height: 0.6, zone: 0.5 },
    ],
  );
}

/** The star under the ledge, left there. */
export const tidePoolStar: Motif = {
  key: 'star',
  title: 'Tide Pool Star',
  draw: (sheet) => {
    const { pen, wide, high, chance } = sheet;
    for (const { at, radius } of packed(sheet, { most: 44, least: 9, tries: 1500, apart: 1.05 })) {
      const zone = chance.between(0, 1) > 0.8 ? 0.8 : 0;
      pen.dome(
        at,
        [radius, radius * 0.84],
        [
          { height: 0.5, zone },
          { height: 0.26, zone },
        ],
        chance.between(0, 90),
      );
    }
    const pools = Math.max(1, Math.round(wide / high));
    for (let pool = 0; pool < pools; pool += 1) {
      const x = (wide * (pool + 0.5)) / pools;
      anemone(sheet, [x - wide / pools / 2 + 150, high * 0.84], 124);
      anemone(sheet, [x + wide / pools / 2 - 120, high * 0.16], 104);
      star(sheet, [x + 8, high * 0.5], Math.min(390, high * 0.4), -96 + pool * 24);
      const shell: Spot = [x + wide / pools / 2 - 150, high * 0.84];
      pen.fill(
        outlined('M-66 26C-70 -26 -20 -60 28 -50C66 -42 76 -2 58 26C30 48 -36 48 -66 26Z', {
          at: shell,
        }),
        { height: 0.6, zone: 0.9 },
      );
      for (let whorl = 0; whorl < 5; whorl += 1) {
        pen.dome(
          from(shell, 20 + whorl * 8, whorl * 13 - 10),
          [54 - whorl * 10, 46 - whorl * 9],
          [
            { height: 0.8 + whorl * 0.05, zone: whorl % 2 },
            { height: 0.42 + whorl * 0.05, zone: 0.8 },
          ],
        );
      }
    }
  },
};
