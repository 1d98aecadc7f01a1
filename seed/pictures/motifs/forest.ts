import { course, from, outlined, type Level, type Motif, type Sheet, type Spot } from '../pen';
import { along, bending, headingAt, leaf, stem } from './growth';

/** A frond of narrow leaves in two ranks, each with its small ear at the stalk. */
function frond(sheet: Sheet, spine: readonly Spot[], long: number, height: number): void {
  const { pen } = sheet;
  const pairs = Math.round(long / 36);
  for (let pair = pairs; pair >= 0; pair -= 1) {
    const share = 0.06 + (pair / pairs) * 0.93;
    const at = along(spine, share);
    const way = headingAt(spine, Math.round(share * (spine.length - 1)));
    const reach = long * 0.27 * Math.sin(Math.PI * (0.17 + share * 0.81)) ** 0.8 + 8;
    for (const side of [1, -1] as const) {
      const turn = way + side * (72 - share * 26);
      const drop = height - pair * 0.004;
      leaf(pen, { at, turn, long: reach, wide: 30 - share * 13, height: drop, bend: side * -22 });
      pen.dome(
        from(at, turn - side * 18, 15),
        [10, 7],
        [
          { height: drop, zone: 1 },
          { height: 0.5, zone: 1 },
        ],
        turn,
      );
    }
  }
  stem(pen, spine, [15, 5], { height: 0.98, zone: 1 });
}

/** Fronds from the bank behind the kiln shed. */
export const swordFern: Motif = {
  key: 'fern',
  title: 'Sword Fern',
  draw: (sheet) => {
    const { wide, high } = sheet;
    const plants = Math.max(1, Math.round(wide / high / 1.1));
    for (let plant = 0; plant < plants; plant += 1) {
      const x = (wide * (plant + 0.5)) / plants;
      const long = high * 1.02;
      const fan: [number, number, number][] = [
        [-158, 0.62, 64],
        [-24, 0.6, -64],
        [-128, 0.86, 46],
        [-52, 0.84, -50],
        [-92, 0.98, 16],
      ];
      fan.forEach(([turn, share, bend], order) => {
        const spine = bending([x + (turn + 90) * 0.5, high * 0.97], turn, long * share, [
          bend * 0.5,
          bend,
        ]);
        frond(sheet, spine, long * share, 0.66 + order * 0.075);
      });
    }
  },
};

/** One flat spray: twigs by turns to either side, each set with small scales of leaf. */
function spray(sheet: Sheet, spine: readonly Spot[], long: number, height: number): void {
  const { pen } = sheet;
  const twigs = Math.round(long / 38);
  for (let twig = twigs; twig >= 0; twig -= 1) {
    const share = 0.1 + (twig / twigs) * 0.88;
    const at = along(spine, share);
    const way = headingAt(spine, Math.round(share * (spine.length - 1)));
    const side = twig % 2 === 0 ? 1 : -1;
    const reach =
      long * 0.3 * Math.sin(Math.PI * (0.24 + share * 0.72)) * (twig % 4 < 2 ? 1 : 0.72) + 14;
    const twigSpine = bending(at, way + side * 52, reach, [side * -44, side * -20]);
    const scales = Math.max(4, Math.round(reach / 17));
    for (let scale = scales; scale >= 1; scale -= 1) {
      const place = along(twigSpine, scale / (scales + 0.2));
      const lean = headingAt(twigSpine, Math.round((scale / scales) * 12));
      const tip = 1 - scale / scales;
      for (const edge of [1, -1] as const) {
        const turn = lean + edge * (34 + tip * 8);
        leaf(pen, { at: place, turn, long: 19 + tip * 13, wide: 12, height });
      }
    }
    pen.line(course(twigSpine), 5, { height: height * 0.98, zone: 1 });
  }
  stem(pen, spine, [11, 5], { height: height + 0.06, zone: 0.7 });
}

/** A cedar bough, heavy with rain. */
export const cedarBough: Motif = {
  key: 'cedar',
  title: 'Cedar Bough',
  draw: (sheet) => {
    const { pen, wide, high, chance } = sheet;
    const boughs = Math.max(1, Math.round(wide / 1000));
    for (let line = 0; line < wide / 44; line += 1) {
      const x = chance.between(0, wide);
      const y = chance.between(-60, high);
      pen.line(`M${x} ${y}L${x - 26} ${y + chance.between(70, 190)}`, 4.5, { height: 0.42 });
    }
    for (let bough = 0; bough < boughs; bough += 1) {
      const span = wide / boughs;
      const start: Spot = [span * bough - 40, high * 0.07];
      const branch = bending(start, 4, span * 1.12, [10, 34]);
      const hung: [number, number, number][] = [
        [0.12, 0.62, 98],
        [0.86, 0.5, 62],
        [0.3, 0.86, 90],
        [0.66, 0.74, 72],
        [0.48, 0.98, 80],
      ];
      hung.forEach(([share, tall, turn], order) => {
        const long = Math.min(high * 0.82, 1150) * tall;
        const spine = bending(along(branch, share), turn, long, [order % 2 ? -10 : 12, 22]);
        spray(sheet, spine, long, 0.64 + order * 0.07);
      });
      stem(pen, branch, [34, 12], { height: 1, zone: 0.6 });
    }
  },
};

function chanterelle(sheet: Sheet, at: Spot, tall: number, turn: number): void {
  const { pen } = sheet;
  const scale = tall / 400;
  const to = { at, turn, scale };
  const put = (shape: string) => outlined(shape, to);
  const point = (x: number, y: number): Spot => {
    const angle = (turn * Math.PI) / 180;
    const [sx, sy] = [x * scale, y * scale];
    return [
      at[0] + sx * Math.cos(angle) - sy * Math.sin(angle),
      at[1] + sx * Math.sin(angle) + sy * Math.cos(angle),
    ];
  };
  const trumpet =
    'M-34 0C-40 -80 -52 -150 -96 -220C-126 -266 -172 -292 -206 -308C-140 -262 -60 -246 4 -250' +
    'C72 -252 150 -272 204 -320C176 -292 128 -262 98 -214C60 -152 44 -80 38 0C20 16 -16 16 -34 0Z';
  pen.line(put(trumpet), 9 * scale, { height: 0.14 });
  pen.lean(
    put(trumpet),
    [point(-60, -120), point(90, -90)],
    { height: 0.86, zone: 1 },
    { height: 0.52, zone: 1 },
  );
  for (let gill = 0; gill < 17; gill += 1) {
    const share = gill / 16 - 0.5;
    const rim = share * 376;
    const rimY = -266 - Math.abs(share) * 76;
    const fork = share * 130;
    const start = -34 - ((gill * 7) % 5) * 17 + Math.abs(share) * 20;
    pen.line(
      put(`M${share * 50} ${start}C${fork * 0.62} -130 ${fork * 1.05} -176 ${rim} ${rimY}`),
      4.6 * scale,
      { height: 0.94, zone: 1 },
    );
    if (gill % 2 === 0) continue;
    pen.line(
      put(
        `M${fork * 0.98 + 5} -170C${fork * 1.2 + 5} -196 ${rim * 0.9 + 7} ${rimY + 30} ${rim + 11} ${rimY + 8}`,
      ),
      3.2 * scale,
      { height: 0.86, zone: 1 },
    );
  }
  const cap =
    'M-214 -302C-212 -332 -176 -346 -136 -340C-104 -372 -52 -364 -10 -374C30 -384 84 -360 122 -366' +
    'C164 -368 200 -352 212 -318C198 -290 150 -274 104 -264C52 -252 -44 -250 -100 -262C-146 -272 -196 -282 -214 -302Z';
  pen.line(put(cap), 5 * scale, { height: 0.3, zone: 1 });
  pen.lean(
    put(cap),
    [point(-40, -378), point(10, -256)],
    { height: 0.56, zone: 0.75 },
    { height: 1, zone: 1 },
  );
  pen.dome(
    point(-4, -326),
    [118 * scale, 25 * scale],
    [
      { height: 0.3, zone: 0.8 },
      { height: 0.74, zone: 0.9 },
    ],
    turn,
  );
}

/** Where they grow is not told. */
export const chanterelles: Motif = {
  key: 'chanterelle',
  title: 'Chanterelles',
  draw: (sheet) => {
    const { pen, wide, high, chance } = sheet;
    const groups = Math.max(1, Math.round(wide / 1000));
    for (let twig = 0; twig < wide / 40; twig += 1) {
      const at: Spot = [chance.between(0, wide), chance.between(high * 0.02, high * 0.6)];
      const [bx, by] = from(at, chance.between(20, 160), chance.between(30, 70));
      pen.line(`M${at[0]} ${at[1]}L${bx} ${by}`, 6, { height: 0.4 });
    }
    for (let group = 0; group < groups; group += 1) {
      const left = (wide * group) / groups;
      const span = wide / groups;
      chanterelle(sheet, [left + span * 0.74, high * 0.93], high * 0.56, 9);
      chanterelle(sheet, [left + span * 0.2, high * 0.95], high * 0.46, -10);
      chanterelle(sheet, [left + span * 0.47, high * 0.98], high * 0.78, -1);
      chanterelle(sheet, [left + span * 0.88, high * 1.0], high * 0.3, 14);
    }
    for (let moss = 0; moss < wide / 7; moss += 1) {
      const x = chance.between(-20, wide + 20);
      const y = high - chance.between(0, 84) * (0.6 + 0.4 * Math.sin(x / 120));
      const size = chance.between(10, 26);
      pen.dome([x, y], [size, size * 0.85], [{ height: 0.75 }, { height: 0.3 }]);
    }
  },
};

/** A fir: boughs that droop in tiers from a leader. */
function fir(sheet: Sheet, foot: Spot, tall: number, level: Level): void {
  const { pen, chance } = sheet;
  const tiers = Math.max(6, Math.round(tall / 30));
  const top: Spot = [foot[0], foot[1] - tall];
  for (const side of [1, -1] as const) {
    const edge: Spot[] = [];
    for (let tier = 1; tier <= tiers; tier += 1) {
      const share = tier / tiers;
      const y = top[1] + tall * share;
      const reach = tall * 0.21 * share ** 0.9 * chance.between(0.84, 1.12);
      edge.push(
        [foot[0] + side * reach, y + tall * 0.022],
        [foot[0] + side * reach * 0.5, y - tall * 0.012],
      );
    }
    const spots = [top, ...edge, [foot[0], foot[1] + 10] as Spot];
    const path = `M${spots.map(([x, y]) => `${Math.round(x)} ${Math.round(y)}`).join('L')}Z`;
    const outer: Spot = [foot[0] + side * tall * 0.15, foot[1]];
    const drop = side === 1 ? 0.6 : 0.84;
    pen.lean(path, [[foot[0], foot[1]], outer], level, { ...level, height: level.height * drop });
  }
}

/** Four ridges, each paler than the one before. */
export const fogAndFirs: Motif = {
  key: 'fog',
  title: 'Fog and Firs',
  draw: (sheet) => {
    const { pen, wide, high, chance } = sheet;
    const sun: Spot = [wide * 0.7, high * 0.22];
    pen.dome(
      sun,
      [104, 104],
      [
        { height: 0.44, zone: 0.7 },
        { height: 0.38, zone: 0.7 },
      ],
    );
    for (let ridge = 0; ridge < 4; ridge += 1) {
      const level = high * (0.42 + ridge * 0.175);
      const height = 0.42 + ridge * 0.17;
      const zone = ridge / 3;
      const phase = chance.between(0, 6);
      const crest = (x: number) =>
        level + Math.sin(x / (250 + ridge * 60) + phase) * 46 + Math.sin(x / 97 + phase * 2) * 12;
      const spots: Spot[] = [];
      for (let x = -60; x <= wide + 60; x += 40) spots.push([x, crest(x)]);
      const tall = high * (0.12 + ridge * 0.062);
      const gap = 38 + ridge * 30;
      for (let x = -20; x < wide + 40; x += gap * chance.between(0.62, 1.3)) {
        fir(sheet, [x, crest(x) + 34], tall * chance.between(0.6, 1.22), { height, zone });
      }
      const hill = `${course(spots)}L${wide + 60} ${high + 60}L-60 ${high + 60}Z`;
      pen.lean(
        hill,
        [
          [0, level + 30],
          [0, level + 165],
        ],
        { height: height * 0.94, zone },
        { height: 0.33, zone: 0 },
      );
    }
  },
};
