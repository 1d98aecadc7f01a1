import type { Chance } from './chance';

/**
 * Draws a relief as heights: 0 is the bottom of a cut, about 0.3 the slab's own surface, 1 the
 * highest clay. `zone` is the share of the second glaze. One unit is a thousandth of the short side.
 */
export type Level = Readonly<{ height: number; zone?: number }>;

/** The sheet a motif is drawn on, its short side 1000 units, and the chance it is drawn with. */
export type Sheet = Readonly<{ wide: number; high: number; chance: Chance; pen: Pen }>;

/** A motif: what it is called and how it is drawn on any sheet. */
export type Motif = Readonly<{ key: string; title: string; draw: (sheet: Sheet) => void }>;

/** A point of a line. */
export type Spot = readonly [x: number, y: number];

/** Collects shapes, later ones over earlier ones. */
export class Pen {
  private readonly defs: string[] = [];
  private readonly shapes: string[] = [];

  /** A filled outline at one height. */
  fill(outline: string, level: Level): void {
    this.shapes.push(`<path d="${outline}" fill="${paint(level)}"/>`);
  }

  /** A filled outline that leans: `from` at one end of the line a to b, `to` at the other. */
  lean(outline: string, line: readonly [Spot, Spot], from: Level, to: Level): void {
    const [[x1, y1], [x2, y2]] = line;
    const name = this.gradient(
      `<linearGradient id="@" gradientUnits="userSpaceOnUse" x1="${r(x1)}" y1="${r(y1)}" ` +
        `x2="${r(x2)}" y2="${r(y2)}"><stop stop-color="${paint(from)}"/>` +
        `<stop offset="1" stop-color="${paint(to)}"/></linearGradient>`,
    );
    this.shapes.push(`<path d="${outline}" fill="url(#${name})"/>`);
  }

  /** A dome: highest in the middle and round towards its edge; `turn` in degrees. */
  dome(middle: Spot, radii: Spot, levels: readonly [top: Level, edge: Level], turn = 0): void {
    const [top, edge] = levels;
    const [x, y] = middle;
    const stops = [0, 0.35, 0.6, 0.8, 0.92, 1].map((along) => {
      const roundness = Math.sqrt(Math.max(0, 1 - along * along));
      const height = edge.height + (top.height - edge.height) * roundness;
      const zone = (edge.zone ?? 0) + ((top.zone ?? 0) - (edge.zone ?? 0)) * (1 - along);
      return `<stop offset="${along}" stop-color="${paint({ height, zone })}"/>`;
    });
    const name = this.gradient(`<radialGradient id="@">${stops.join('')}</radialGradient>`);
    this.shapes.push(
      `<ellipse rx="${r(radii[0])}" ry="${r(radii[1])}" fill="url(#${name})" ` +
        `transform="translate(${r(x)} ${r(y)}) rotate(${r(turn)})"/>`,
    );
  }

  /** A line of clay laid on, or with a low height a line cut in. */
  line(course: string, width: number, level: Level): void {
    this.shapes.push(
      `<path d="${course}" fill="none" stroke="${paint(level)}" stroke-width="${r(width)}" ` +
        `stroke-linecap="round" stroke-linejoin="round"/>`,
    );
  }

  /** The whole drawing as SVG, `wide` × `high` pixels. */
  drawing(sheet: Readonly<{ wide: number; high: number }>, wide: number, high: number): string {
    return (
      `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${high}" ` +
      `viewBox="0 0 ${r(sheet.wide)} ${r(sheet.high)}" preserveAspectRatio="none">` +
      `<defs>${this.defs.join('')}</defs><rect width="100%" height="100%" ` +
      `fill="${paint({ height: 0.3 })}"/>${this.shapes.join('')}</svg>`
    );
  }

  private gradient(text: string): string {
    const name = `g${this.defs.length}`;
    this.defs.push(text.replace('@', name));
    return name;
  }
}

function paint({ height, zone = 0 }: Level): string {
  const byte = (share: number) => Math.round(Math.min(Math.max(share, 0), 1) * 255);
  return `rgb(${byte(height)},${byte(zone)},0)`;
}

function r(value: number): string {
  return String(Math.round(value * 10) / 10);
}

/** A smooth course through spots, as an SVG path. */
export function course(spots: readonly Spot[], closed = false): string {
  const at = (index: number): Spot => {
    const count = spots.length;
    const held = closed ? (index + count) % count : Math.min(Math.max(index, 0), count - 1);
    return spots[held] ?? [0, 0];
  };
  const [startX, startY] = at(0);
  const pieces = [`M${r(startX)} ${r(startY)}`];
  const steps = closed ? spots.length : spots.length - 1;
  for (let step = 0; step < steps; step += 1) {
    const [before, here, there, after] = [at(step - 1), at(step), at(step + 1), at(step + 2)];
    const one = [here[0] + (there[0] - before[0]) / 6, here[1] + (there[1] - before[1]) / 6];
    const two = [there[0] - (after[0] - here[0]) / 6, there[1] - (after[1] - here[1]) / 6];
    const numbers = [...one, ...two, ...there].map(r).join(' ');
    pieces.push(`C${numbers}`);
  }
  return pieces.join('') + (closed ? 'Z' : '');
}

/** A spot so far from another, in a direction given in degrees (0 to the right, 90 down). */
export function from([x, y]: Spot, degrees: number, distance: number): Spot {
  const turn = (degrees * Math.PI) / 180;
  return [x + Math.cos(turn) * distance, y + Math.sin(turn) * distance];
}

/** Moves, turns and stretches spots drawn about the middle (0, 0); `flip` mirrors left and right. */
export function placed(
  spots: readonly Spot[],
  to: Readonly<{ at: Spot; turn?: number; scale?: number; flip?: boolean }>,
): Spot[] {
  const turn = ((to.turn ?? 0) * Math.PI) / 180;
  const scale = to.scale ?? 1;
  return spots.map(([x, y]) => {
    const sx = (to.flip ? -x : x) * scale;
    const sy = y * scale;
    return [
      to.at[0] + sx * Math.cos(turn) - sy * Math.sin(turn),
      to.at[1] + sx * Math.sin(turn) + sy * Math.cos(turn),
    ];
  });
}

/**
 * Moves, turns and stretches an outline given in absolute coordinates (M, L, C, Q and Z only),
 * drawn about the middle (0, 0).
 */
export function outlined(
  outline: string,
  to: Readonly<{ at: Spot; turn?: number; scale?: number; flip?: boolean }>,
): string {
  return outline.replace(/(-?[\d.]+)[ ,](-?[\d.]+)/g, (_pair, x: string, y: string) => {
    const [[px, py] = [0, 0]] = placed([[Number(x), Number(y)]], to);
    return `${r(px)} ${r(py)}`;
  });
}
