import { from, outlined, type Motif, type Sheet, type Spot } from '../pen';
import { leaf } from './growth';
import { rings, swell } from './water';

type Flight = Readonly<{ at: Spot; turn: number; scale: number; flip?: boolean }>;

const ternBody =
  'M128 4C112 -14 92 -24 66 -22C30 -24 -20 -22 -62 -14C-104 -8 -150 -14 -214 -40' +
  'C-176 -10 -158 -2 -140 4C-160 14 -184 22 -222 40C-150 36 -96 28 -52 26C-6 34 48 30 78 18C96 14 112 10 128 4Z';
const farWing = 'M44 -14C52 -70 30 -150 -58 -236C-40 -160 -48 -90 -34 -16Z';
const nearWing = 'M50 8C66 70 40 170 -52 268C-34 190 -52 110 -44 14Z';

function tern(sheet: Sheet, flight: Flight): void {
  const { pen } = sheet;
  const put = (outline: string) => outlined(outline, flight);
  const point = (x: number, y: number): Spot => onSheet(flight, x, y);
  pen.lean(
    put(farWing),
    [point(40, -60), point(-50, -130)],
    { height: 0.8, zone: 1 },
    { height: 0.5, zone: 1 },
  );
  for (let feather = 0; feather < 6; feather += 1) {
    const down = -30 - feather * 30;
    pen.line(
      put(`M${22 - feather * 12} ${down - 8}L${-42 + feather * 1} ${down + 24}`),
      3.4 * flight.scale,
      {
        height: 0.42,
        zone: 1,
      },
    );
  }
  pen.lean(
    put(ternBody),
    [point(0, -26), point(0, 34)],
    { height: 0.98, zone: 1 },
    { height: 0.6, zone: 1 },
  );
  pen.lean(
    put(nearWing),
    [point(52, 70), point(-52, 150)],
    { height: 1, zone: 1 },
    { height: 0.6, zone: 1 },
  );
  for (let feather = 0; feather < 8; feather += 1) {
    const down = 44 + feather * 25;
    pen.line(
      put(`M${40 - feather * 9} ${down - 14}L${-45 + feather * 1} ${down + 34}`),
      4 * flight.scale,
      {
        height: 0.5,
        zone: 1,
      },
    );
  }
  pen.fill(put('M128 4C112 -14 92 -24 62 -21C78 -10 100 -2 128 4Z'), { height: 0.9, zone: 0.2 });
  pen.fill(put('M122 1L172 12L120 11Z'), { height: 0.85, zone: 0 });
  const [ex, ey] = point(92, -4);
  pen.dome(
    [ex, ey],
    [5 * flight.scale, 5 * flight.scale],
    [
      { height: 0.3, zone: 1 },
      { height: 0.5, zone: 1 },
    ],
  );
}

function onSheet({ at, turn, scale, flip }: Flight, x: number, y: number): Spot {
  const angle = (turn * Math.PI) / 180;
  const sx = (flip ? -x : x) * scale;
  const sy = y * scale;
  return [
    at[0] + sx * Math.cos(angle) - sy * Math.sin(angle),
    at[1] + sx * Math.sin(angle) + sy * Math.cos(angle),
  ];
}

function fish(sheet: Sheet, at: Spot, turn: number, long: number): void {
  const { pen } = sheet;
  const wide = long * 0.3;
  const to = { at, turn, scale: long / 100 };
  const body = 'M50 0C30 -17 -8 -18 -34 -3L-52 -15C-48 -5 -48 5 -52 15L-34 3C-8 18 30 17 50 0Z';
  const up = from(at, turn - 90, wide * 0.5);
  const down = from(at, turn + 90, wide * 0.5);
  pen.lean(outlined(body, to), [up, down], { height: 0.68 }, { height: 0.4 });
  pen.line(outlined('M24 -9C19 -3 19 3 24 9', to), long * 0.03, { height: 0.34 });
  pen.line(outlined('M18 -1C0 -4 -16 -2 -32 0', to), long * 0.025, { height: 0.42 });
}

/** Terns in flight above a shoal that turns under the surface. */
export const ternOverShoals: Motif = {
  key: 'tern',
  title: 'Tern over Shoals',
  draw: (sheet) => {
    const { wide, high, chance } = sheet;
    const line = high * 0.56;
    swell(sheet, { top: line, foot: high + 40, step: 46, rise: 15, long: 620 }, { height: 0.37 });
    for (let row = 0; row < 5; row += 1) {
      const y = line + 62 + row * (high - line - 60) * 0.2;
      const gap = 128 + row * 10;
      for (let x = -60 + (row % 2) * 66; x < wide + 60; x += gap) {
        const bend = Math.sin(x / 260 + row) * 26;
        fish(
          sheet,
          [x + chance.about(10), y + bend + chance.about(7)],
          Math.cos(x / 260 + row) * 13,
          96 + row * 12,
        );
      }
    }
    const birds: Flight[] = [
      { at: [wide * 0.53, high * 0.31], turn: -16, scale: wide < 900 ? 1.45 : 1.62 },
    ];
    if (wide > 1300) {
      birds.push({ at: [wide * 0.18, high * 0.42], turn: -4, scale: 0.8 });
      birds.push({ at: [wide * 0.84, high * 0.2], turn: -28, scale: 0.72 });
    }
    if (high > 1300) birds.push({ at: [wide * 0.24, high * 0.16], turn: -30, scale: 0.52 });
    for (const bird of birds) tern(sheet, bird);
  },
};

const heronBody =
  'M-150 74C-120 20 -70 -22 -6 -44C30 -58 52 -78 58 -118C60 -150 42 -168 38 -198C34 -232 56 -262 92 -264' +
  'C112 -264 126 -256 134 -246L232 -226L134 -226C112 -218 84 -224 80 -202C80 -178 104 -160 102 -114' +
  'C98 -62 72 -20 40 20C8 58 -40 74 -84 74C-110 76 -132 92 -158 104C-152 94 -150 84 -150 74Z';

/** A heron that stands in the shallows among rushes. */
export const heronAtLowWater: Motif = {
  key: 'heron',
  title: 'Heron at Low Water',
  draw: (sheet) => {
    const { pen, wide, high, chance } = sheet;
    const foot = high * 0.8;
    const scale = Math.min(high / 690, 2);
    const at: Spot = [wide * 0.47, foot - 196 * scale];
    swell(
      sheet,
      { top: foot - 60, foot: high + 40, step: 44, rise: 9, long: 700 },
      { height: 0.38 },
    );
    rings(
      sheet,
      [at[0] - 6, foot + 20],
      { from: 30, to: 290, step: 38, flat: 0.24 },
      { height: 0.62 },
    );
    for (let rush = 0; rush < wide / 34; rush += 1) {
      const x = chance.between(0, wide);
      if (Math.abs(x - at[0]) < 190 * scale * 0.72) continue;
      const tall = chance.between(0.34, 0.74) * high;
      const sway = chance.about(9);
      leaf(pen, {
        at: [x, foot + 34],
        turn: -90 + sway,
        long: tall,
        wide: 21,
        height: 0.55,
        zone: 0,
        bend: sway * 2.4,
      });
    }
    const put = (outline: string) => outlined(outline, { at, scale });
    const point = (x: number, y: number): Spot => [at[0] + x * scale, at[1] + y * scale];
    for (const leg of ['M-22 66L-14 130L-24 210', 'M8 60L24 134L16 214']) {
      pen.line(put(leg), 8.5 * scale, { height: 0.78, zone: 1 });
    }
    pen.lean(
      put(heronBody),
      [point(40, -120), point(-90, 80)],
      { height: 1, zone: 1 },
      { height: 0.62, zone: 1 },
    );
    const wing =
      'M38 -34C10 -30 -40 -8 -78 26C-108 52 -132 74 -160 106C-118 90 -92 80 -60 72C-10 62 26 30 38 -34Z';
    pen.lean(
      put(wing),
      [point(10, -34), point(-40, 70)],
      { height: 1, zone: 1 },
      { height: 0.72, zone: 1 },
    );
    for (let feather = 0; feather < 7; feather += 1) {
      const y = -18 + feather * 12;
      pen.line(
        put(
          `M${26 - feather * 6} ${y}C${-14 - feather * 9} ${y + 16} ${-60 - feather * 7} ${y + 34} ${-104 - feather * 7} ${y + 56 - feather * 4}`,
        ),
        3.4 * scale,
        { height: 0.52, zone: 1 },
      );
    }
    pen.line(put('M124 -248C96 -262 66 -252 34 -224C20 -214 2 -206 -18 -204'), 6.5 * scale, {
      height: 0.6,
      zone: 0.2,
    });
    pen.line(put('M134 -236L222 -227'), 2.6 * scale, { height: 0.45, zone: 1 });
    pen.dome(
      point(112, -246),
      [5.5 * scale, 5.5 * scale],
      [
        { height: 0.3, zone: 1 },
        { height: 0.6, zone: 1 },
      ],
    );
    for (const line of [
      'M56 -120C62 -150 50 -170 46 -196',
      'M70 -112C76 -146 62 -168 58 -192',
      'M30 -20C56 -44 78 -70 84 -108',
    ]) {
      pen.line(put(line), 3 * scale, { height: 0.62, zone: 1 });
    }
  },
};
