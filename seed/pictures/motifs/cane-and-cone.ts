import { course, from, type Motif, type Sheet, type Spot } from '../pen';
import { along, bending, headingAt, leaf, stem } from './growth';

function berry(sheet: Sheet, at: Spot, size: number, turn: number): void {
  const { pen } = sheet;
  pen.dome(
    at,
    [size * 1.06, size * 0.95],
    [
      { height: 0.5, zone: 1 },
      { height: 0.2, zone: 1 },
    ],
    turn,
  );
  for (let row = 4; row >= 0; row -= 1) {
    const count = [5, 6, 6, 5, 3][row] ?? 3;
    for (let drupe = 0; drupe < count; drupe += 1) {
      const across = ((drupe + 0.5 + (row % 2 ? 0.22 : -0.22)) / count - 0.5) * 2;
      const bulge = Math.sqrt(1 - across * across * 0.8);
      const span = size * ([0.62, 0.88, 0.92, 0.78, 0.42][row] ?? 0.5);
      const place = from(
        from(at, turn, (row - 1.7) * size * 0.42 * (0.8 + 0.2 * bulge)),
        turn + 90,
        across * span,
      );
      const round = size * 0.27 * (0.72 + 0.28 * bulge);
      pen.dome(
        place,
        [round, round * 0.94],
        [
          { height: 0.62 + 0.38 * bulge, zone: 1 },
          { height: 0.36, zone: 1 },
        ],
      );
    }
  }
}

function toothedLeaf(sheet: Sheet, at: Spot, turn: number, long: number): void {
  const { pen } = sheet;
  const teeth = 9;
  const edge = (side: 1 | -1): Spot[] => {
    const spots: Spot[] = [];
    for (let tooth = 0; tooth <= teeth; tooth += 1) {
      const share = tooth / teeth;
      const reach = long * 0.33 * Math.sin(Math.PI * (0.1 + share * 0.88)) ** 0.72;
      const place = from(at, turn, long * share);
      spots.push(from(place, turn + side * 78, reach * 0.82));
      if (tooth < teeth)
        spots.push(from(from(place, turn, long * 0.075), turn + side * 66, reach * 1.07));
    }
    return spots;
  };
  const tip = from(at, turn, long * 1.03);
  const middle = from(at, turn, long * 0.5);
  for (const side of [1, -1] as const) {
    const half = [at, ...edge(side), tip].map(([x, y]) => `${Math.round(x)} ${Math.round(y)}`);
    const outer = from(middle, turn + side * 90, long * 0.32);
    pen.lean(
      `M${half.join('L')}Z`,
      [middle, outer],
      { height: 0.74, zone: 0.4 },
      { height: side === 1 ? 0.5 : 0.4, zone: 0.4 },
    );
  }
  for (let vein = 1; vein < 7; vein += 1) {
    for (const side of [1, -1] as const) {
      const start = from(at, turn, long * (vein / 8));
      const end = from(
        start,
        turn + side * 46,
        long * 0.27 * Math.sin(Math.PI * (0.16 + vein * 0.11)),
      );
      pen.line(course([start, from(start, turn + side * 38, long * 0.12), end]), 3.5, {
        height: 0.34,
        zone: 0.4,
      });
    }
  }
  pen.line(`M${at[0]} ${at[1]}L${tip[0]} ${tip[1]}`, 7, { height: 0.36, zone: 0.4 });
}

function flower(sheet: Sheet, at: Spot, size: number): void {
  const { pen, chance } = sheet;
  for (let petal = 0; petal < 5; petal += 1) {
    const turn = petal * 72 - 90;
    leaf(pen, {
      at: from(at, turn, size * 0.12),
      turn,
      long: size,
      wide: size * 0.66,
      height: 0.9,
      zone: 0.85,
    });
  }
  for (let stamen = 0; stamen < 26; stamen += 1) {
    const place = from(at, stamen * 97, chance.between(2, size * 0.3));
    pen.dome(
      place,
      [size * 0.07, size * 0.07],
      [
        { height: 1, zone: 0 },
        { height: 0.55, zone: 0 },
      ],
    );
  }
}

/** Salmonberry along the lane: leaf, flower and fruit at once, as it is in May. */
export const salmonberry: Motif = {
  key: 'salmonberry',
  title: 'Salmonberry',
  draw: (sheet) => {
    const { pen, wide, high } = sheet;
    const runs = Math.max(1, Math.round(wide / 1000));
    for (let run = 0; run < runs; run += 1) {
      const left = (wide * run) / runs;
      const span = wide / runs;
      const cane = bending([left - 20, high * 0.86], -40, span * 1.25, [26, 42]);
      stem(pen, cane, [26, 13], { height: 0.62, zone: 0.3 });
      for (const [share, turn, size] of [
        [0.16, -104, 0.31],
        [0.3, 46, 0.3],
        [0.52, -112, 0.3],
        [0.66, 64, 0.32],
        [0.93, 30, 0.27],
      ] as const) {
        const at = along(cane, share);
        const long = high * size;
        const node = from(at, turn, long * 0.3);
        pen.line(`M${at[0]} ${at[1]}L${node[0]} ${node[1]}`, 9, { height: 0.6, zone: 0.4 });
        toothedLeaf(sheet, from(node, turn + 100, 6), turn + 64, long * 0.72);
        toothedLeaf(sheet, from(node, turn - 100, 6), turn - 64, long * 0.72);
        toothedLeaf(sheet, node, turn, long);
      }
      const hang = (share: number, drop: number): Spot => {
        const [x, y] = along(cane, share);
        pen.line(
          course([
            [x, y],
            [x + 14, y + drop * 0.4],
            [x + 6, y + drop],
          ]),
          8,
          { height: 0.62, zone: 0.4 },
        );
        return [x + 6, y + drop + 44];
      };
      berry(sheet, hang(0.43, high * 0.2), 92, 90);
      berry(sheet, hang(0.82, high * 0.13), 76, 84);
      flower(sheet, [left + span * 0.47, high * 0.22], 104);
      flower(sheet, [left + span * 0.13, high * 0.3], 78);
    }
  },
};

function cone(sheet: Sheet, at: Spot, long: number, turn: number): void {
  const { pen } = sheet;
  const rows = 8;
  const across = turn + 90;
  pen.dome(
    from(at, turn, long * 0.5),
    [long * 0.5, long * 0.3],
    [
      { height: 0.6, zone: 1 },
      { height: 0.2, zone: 1 },
    ],
    turn,
  );
  for (let row = rows - 1; row >= 0; row -= 1) {
    const share = row / (rows - 1);
    const half = long * 0.3 * Math.sin(Math.PI * (0.2 + share * 0.68)) ** 0.7;
    const count = row % 2 === 0 ? 3 : 4;
    for (let scale = 0; scale < count; scale += 1) {
      const off = ((scale + 0.5) / count - 0.5) * 2;
      const place = from(from(at, turn, long * (0.08 + share * 0.8)), across, off * half * 0.86);
      const lean = turn - off * 38;
      const size = long * 0.125;
      const bow = Math.sqrt(1 - off * off * 0.7);
      pen.dome(
        from(place, lean, size * 0.14),
        [size * 1.12, size * 0.98],
        [
          { height: 0.1, zone: 1 },
          { height: 0.2, zone: 1 },
        ],
        lean,
      );
      pen.dome(
        place,
        [size * 1.05, size * 0.92],
        [
          { height: 0.55 + 0.45 * bow, zone: 1 },
          { height: 0.4 + 0.2 * bow, zone: 1 },
        ],
        lean,
      );
      const [ax, ay] = from(place, lean + 180, size * 0.7);
      const [bx, by] = from(place, lean, size * 0.6);
      pen.line(`M${ax} ${ay}L${bx} ${by}`, size * 0.1, { height: 0.5, zone: 1 });
    }
  }
}

function needled(sheet: Sheet, spine: readonly Spot[], gap: number): void {
  const { pen, chance } = sheet;
  const steps = Math.round(spine.length * gap);
  for (let step = 0; step < steps; step += 1) {
    const share = step / steps;
    const at = along(spine, share);
    const way = headingAt(spine, Math.round(share * (spine.length - 1)));
    for (const side of [1, -1] as const) {
      const turn = way + side * chance.between(52, 78);
      leaf(pen, { at, turn, long: chance.between(44, 82), wide: 15, height: 0.72, zone: 0 });
    }
  }
  stem(pen, spine, [15, 7], { height: 0.85, zone: 0.7 });
}

/** Hemlock twigs with their small cones. */
export const hemlockCones: Motif = {
  key: 'hemlock',
  title: 'Hemlock Cones',
  draw: (sheet) => {
    const { wide, high } = sheet;
    const runs = Math.max(1, Math.round(wide / 1000));
    for (let run = 0; run < runs; run += 1) {
      const left = (wide * run) / runs;
      const span = wide / runs;
      const twig = (x: number, y: number, turn: number, long: number) =>
        bending([left + span * x, high * y], turn, long, [16, 28]);
      const twigs = [
        twig(-0.04, 0.1, 14, span * 1.15),
        twig(0.22, 0.18, 58, high * 0.62),
        twig(0.6, 0.28, 66, high * 0.5),
        twig(-0.03, 0.42, 26, span * 0.5),
      ];
      for (const spine of twigs) needled(sheet, spine, 2.1);
      const cones: [number, number, number, number][] = [
        [0.36, 0.36, 330, 84],
        [0.66, 0.42, 370, 98],
        [0.12, 0.5, 300, 92],
        [0.86, 0.24, 250, 76],
        [0.5, 0.74, 220, 104],
      ];
      for (const [x, y, long, turn] of cones) {
        cone(sheet, [left + span * x, high * y], long * Math.min(1, high / 1000), turn);
      }
    }
  },
};
