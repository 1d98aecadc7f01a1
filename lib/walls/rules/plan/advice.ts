import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';
import { gravityOf, screws } from '../fixings/screws';
import { leadHolePart } from '../fixings/withdrawal';
import type { PlanAsked } from './plan';

/** From here on a piece is better made of several: 65 lb, in grams; common practice says 60 to 70. */
const splitFromG = 29_484;

/** What every plan says. */
export const decideOnSite =
  'Check everything on site before you drill. Local codes and a licensed contractor decide; this is no engineer’s approval.';

/**
 * What to mind at the wall, one sentence each, in the order of the work.
 *
 * @source common practice; lead holes: AWC NDS 2018, section 12.1.5
 */
export function adviceFor(of: PlanAsked, system: LengthSystem): string[] {
  return [
    ...beforeDrilling(of),
    ...drilling(of, system),
    ...hanging(of, system),
    ...aroundIt(of),
    decideOnSite,
  ];
}

function beforeDrilling({ wall }: PlanAsked): string[] {
  return [
    wall.servicesSought === true
      ? 'Wires and pipes were looked for; look once more where you drill, and switch the power off where a wire is near.'
      : 'Nobody has looked for wires and pipes yet: find and mark them before you drill. Gas, power and water are for licensed trades.',
    ...(wall.wall === 'concrete'
      ? ['Never drill a slab that may be post-tensioned before it was scanned.']
      : []),
  ];
}

function drilling({ wall, asked }: PlanAsked, system: LengthSystem): string[] {
  const { fixing } = asked;
  const dust =
    'Hold the vacuum at the hole and wear a mask: dust of masonry and plaster scars the lungs.';
  const paint = 'A house from before 1978 may have lead in its paint: then certified practice.';
  if (fixing.by === 'anchor') {
    const isSteel = wall.wall === 'steel_studs' || wall.wall === 'gypsum_board';
    const depth = `Drill ${formatLength(fixing.embedUm, system)} deep and tighten as its maker says.`;
    const joint =
      wall.wall === 'brick' ? ['Drill into the brick, not into the joint of the mortar.'] : [];
    return [...(isSteel ? [] : [depth]), ...joint, dust, paint];
  }
  const lead = leadHole(gravityOf(wall.studWood), screws[fixing.screw].rootIn, system);
  const isPlaster = wall.wall === 'plaster_on_lath';
  const taped = isPlaster
    ? ['Tape the plaster before you drill it, drill it first, and never hammer.', dust]
    : [];
  return [lead, ...taped, paint];
}

function leadHole(gravity: number, rootIn: number, system: LengthSystem): string {
  const part = leadHolePart(gravity) ?? 0.7;
  const um = Math.round(rootIn * part * 25_400);
  return `Drill first, about ${formatLength(um, system)} wide, so that the stud does not split; find its middle with a nail to either side.`;
}

function hanging({ piece, asked }: PlanAsked, system: LengthSystem): string[] {
  const { cleat } = asked;
  const split =
    piece.weightG > splitFromG
      ? [
          `Above ${formatWeight(splitFromG, system === 'in' ? 'lb' : 'kg')} a piece is better made as several panels, each on its own cleat: it is the weight that can be held level overhead that counts.`,
        ]
      : [];
  return [
    ...split,
    'Level the cleat once, and fix it at every place before anything hangs on it.',
    `Put a spacer bar of ${formatLength(cleat.thicknessUm, system)} behind the lower edge, so that it hangs plumb and rests there.`,
    'When it hangs, drive the stop screw beside or through the cleat, so that nobody can lift it off.',
    'Nobody lets go before both ends are seated and the level was read. Photograph the fixings before the piece covers them.',
  ];
}

function aroundIt({ wall }: PlanAsked): string[] {
  return [
    ...(wall.quakes === true
      ? ['The ground quakes here: give it a second fixing at the bottom that holds by itself.']
      : []),
    ...(wall.isOverPeople === true
      ? ['People sit, sleep or pass below it: a second hold, and think of another wall.']
      : []),
    ...(wall.isOutdoors === true
      ? [
          'Outdoors let water run off behind it: flashed at the top, open at the bottom, all metal stainless. After rain it weighs more: plan it with the water that its clay takes up.',
        ]
      : []),
  ];
}
