import { umPerInch } from '@/lib/units/rules';
import type { BoxAsked, BoxKind } from './boxing';
import { paddingUsualUm } from './boxing';
import { sortedSides, type Weighed } from './measures';

/** How something is packed: tiles on edge in sleeves, a panel flat in a box, a relief in a crate. */
export type Tier = 'sleeves' | 'panel_box' | 'crate';

/** The largest that a tile is, and a panel for a box of board: longest side and weight. */
const tierMost = {
  sleeves: { longestUm: 12 * umPerInch, weightG: 3_629 },
  panelBox: { longestUm: 26 * umPerInch, weightG: 18_144 },
} as const;

/**
 * How a piece is packed: up to 12 in and 8 lb on edge in a sleeve, up to 26 in and 40 lb flat in a
 * double box with boards, and beyond that in a crate.
 *
 * @source common practice for the three ways; where one ends and the next begins is the studio’s own
 */
export function tierOf(piece: Weighed): Tier {
  const longest = sortedSides(piece)[2];
  const { sleeves, panelBox } = tierMost;
  if (longest <= sleeves.longestUm && piece.weightG <= sleeves.weightG) return 'sleeves';
  if (longest <= panelBox.longestUm && piece.weightG <= panelBox.weightG) return 'panel_box';
  return 'crate';
}

/** How the box of a tier is made. */
export const tierBox: Readonly<Record<Tier, BoxAsked>> = {
  sleeves: { kind: 'double_box', paddingUm: paddingUsualUm, hasBoards: false },
  panel_box: { kind: 'double_box', paddingUm: paddingUsualUm, hasBoards: true },
  crate: { kind: 'crate', paddingUm: paddingUsualUm, hasBoards: false },
};

/** How it is done, step by step, for whoever packs. */
export const tierSteps: Readonly<Record<Tier, readonly string[]>> = {
  sleeves: [
    'Each one in a sleeve of foam, standing on its edge, the inner box full to the last.',
    'Two inches of fill all round between the inner box and the outer one.',
    'Shake it: nothing moves.',
  ],
  panel_box: [
    'Face up on foam, corners on, a stiff board under it and a lid that touches nothing.',
    'Wrap with stretch film, so that whoever opens it needs no knife.',
    'Two inches of fill all round between the inner box and the outer one. Shake it: nothing moves.',
  ],
  crate: [
    'Islands of foam under the board; nothing touches the relief.',
    'Each piece of several bagged and numbered; number the layers, a picture of each in the lid.',
    'Screwed, never nailed; mark the screws of the face that opens.',
  ],
};

/** A kind of box in words. */
export const boxWords: Readonly<Record<BoxKind, string>> = {
  box: 'box',
  double_box: 'double box',
  crate: 'crate',
};
