import { course, type Level, type Sheet, type Spot } from '../pen';

/** Long low waves cut side by side between two heights of the sheet. */
export function swell(
  { pen, wide, chance }: Sheet,
  band: Readonly<{ top: number; foot: number; step: number; rise: number; long: number }>,
  level: Level,
): void {
  let phase = chance.between(0, 6);
  for (let y = band.top; y < band.foot; y += band.step) {
    phase += chance.between(0.35, 0.8);
    const spots: Spot[] = [];
    for (let x = -40; x <= wide + 40; x += 36) {
      const up = Math.sin((x / band.long) * Math.PI * 2 + phase) * band.rise;
      const up2 = Math.sin((x / band.long) * Math.PI * 4.6 + phase * 2.1) * band.rise * 0.35;
      spots.push([x, y + up + up2]);
    }
    pen.line(course(spots), band.step * 0.5, level);
  }
}

/** Rings about a place where something met the water, each weaker than the one inside it. */
export function rings(
  { pen }: Sheet,
  at: Spot,
  reach: Readonly<{ from: number; to: number; step: number; flat: number }>,
  level: Level,
): void {
  for (let radius = reach.from; radius <= reach.to; radius += reach.step) {
    const weaker = 1 - (radius - reach.from) / (reach.to - reach.from + 1);
    const spots: Spot[] = [];
    for (let turn = 0; turn < 20; turn += 1) {
      const angle = (turn / 20) * Math.PI * 2;
      spots.push([at[0] + Math.cos(angle) * radius, at[1] + Math.sin(angle) * radius * reach.flat]);
    }
    const height = 0.3 + (level.height - 0.3) * (0.3 + 0.7 * weaker);
    pen.line(course(spots, true), reach.step * (0.3 + 0.16 * weaker), { ...level, height });
  }
}
