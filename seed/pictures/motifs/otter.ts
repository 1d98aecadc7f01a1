import { course, outlined, type Motif, type Sheet, type Spot } from '../pen';
import { rings, swell } from './water';

const back =
  'M-330 30C-290 -18 -220 -40 -150 -34C-120 -30 -100 -10 -84 34C-150 46 -260 46 -330 30Z';
const tail = 'M-560 34C-500 8 -440 0 -390 8C-372 12 -360 22 -352 34C-410 44 -500 46 -560 34Z';

function wake(sheet: Sheet, at: Spot): void {
  const { pen, wide } = sheet;
  for (let line = 8; line >= 0; line -= 1) {
    for (const way of [1, -1] as const) {
      const open = Math.tan(((8 + line * 5.2) * Math.PI) / 180);
      const long = wide * 1.3;
      const spots: Spot[] = [];
      for (let step = 0; step <= 12; step += 1) {
        const out = (step / 12) * long;
        const sway = Math.sin(step * 1.5 + line * 0.8) * (3 + step * 1.3);
        const off = (way < 0 ? 30 : 34) + line * 7 + out * open * 0.66;
        spots.push([at[0] + 150 - line * 40 - out, at[1] + 34 + way * off + sway]);
      }
      pen.line(course(spots), 31 - line * 1.9, {
        height: 0.84 - line * 0.05,
        zone: line % 3 === 0 ? 0.55 : 0,
      });
    }
  }
}

/** Mostly wake: an otter's head and back, and the long lines they draw over still water. */
export const ottersWake: Motif = {
  key: 'otter',
  title: 'Otter’s Wake',
  draw: (sheet) => {
    const { pen, wide, high } = sheet;
    const at: Spot = [wide * (wide > 1300 ? 0.81 : 0.68), high * 0.36];
    const scale = 1.45;
    swell(sheet, { top: -30, foot: high + 40, step: 56, rise: 7, long: 900 }, { height: 0.34 });
    wake(sheet, at);
    const to = { at, scale };
    const put = (outline: string) => outlined(outline, to);
    const point = (x: number, y: number): Spot => [at[0] + x * scale, at[1] + y * scale];
    const fur = { zone: 1 };
    pen.lean(
      put(tail),
      [point(-440, 0), point(-440, 44)],
      { height: 0.86, ...fur },
      { height: 0.42, ...fur },
    );
    pen.lean(
      put(back),
      [point(-180, -38), point(-190, 44)],
      { height: 0.95, ...fur },
      { height: 0.42, ...fur },
    );
    pen.dome(
      point(-4, -22),
      [98 * scale, 64 * scale],
      [
        { height: 1, ...fur },
        { height: 0.4, ...fur },
      ],
      4,
    );
    pen.dome(
      point(62, -2),
      [62 * scale, 42 * scale],
      [
        { height: 1, ...fur },
        { height: 0.6, ...fur },
      ],
      8,
    );
    for (let hair = 0; hair < 13; hair += 1) {
      const x = -300 + hair * 17;
      pen.line(put(`M${x + 16} ${-16 - (hair % 3) * 3}L${x} ${8 + (hair % 2) * 7}`), 3.2 * scale, {
        height: 0.6,
        ...fur,
      });
    }
    for (let hair = 0; hair < 9; hair += 1) {
      const x = -76 + hair * 8;
      pen.line(put(`M${x + 8} ${-30 + (hair % 3) * 9}L${x} ${2 + (hair % 2) * 8}`), 2.8 * scale, {
        height: 0.64,
        ...fur,
      });
    }
    pen.dome(
      point(-46, -70),
      [19 * scale, 15 * scale],
      [
        { height: 1, ...fur },
        { height: 0.7, ...fur },
      ],
      -24,
    );
    pen.dome(
      point(-44, -68),
      [9 * scale, 7 * scale],
      [
        { height: 0.3, ...fur },
        { height: 0.7, ...fur },
      ],
      -24,
    );
    pen.dome(
      point(92, -4),
      [44 * scale, 32 * scale],
      [
        { height: 1, zone: 0.4 },
        { height: 0.72, zone: 0.9 },
      ],
      12,
    );
    pen.dome(
      point(128, -14),
      [17 * scale, 12 * scale],
      [
        { height: 0.7, zone: 1 },
        { height: 0.5, zone: 1 },
      ],
      20,
    );
    pen.dome(
      point(40, -40),
      [9 * scale, 8 * scale],
      [
        { height: 0.16, ...fur },
        { height: 0.3, ...fur },
      ],
    );
    pen.dome(
      point(37, -43),
      [3 * scale, 3 * scale],
      [
        { height: 0.8, ...fur },
        { height: 0.4, ...fur },
      ],
    );
    pen.line(put('M118 12C104 22 84 22 66 14'), 3.4 * scale, { height: 0.3, ...fur });
    for (let whisker = 0; whisker < 5; whisker += 1) {
      const [x, y] = [96 - whisker * 7, 4 + whisker * 2];
      pen.line(
        put(`M${x} ${y}C${x - 16} ${y + 14} ${x - 40} ${y + 22} ${x - 62} ${y + 22 - whisker * 3}`),
        1.9 * scale,
        { height: 0.36, ...fur },
      );
    }
    rings(
      sheet,
      [at[0] + 60 * scale, at[1] + 44 * scale],
      { from: 150, to: 290, step: 42, flat: 0.2 },
      { height: 0.62 },
    );
  },
};
