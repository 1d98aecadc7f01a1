import type { ScrewName } from '../fixings/screws';
import type { HeightBy } from '../hanging';

/** The piece as it will hang; whole micrometres and grams, its board with it. */
export type PieceFacts = {
  readonly widthUm: number;
  readonly heightUm: number;
  readonly depthUm: number;
  readonly weightG: number;
};

/** What the half of a cleat that stays on the wall is made of. */
export type CleatMade = 'wood' | 'plywood' | 'aluminium';

/** The cleats in the order in which a form offers them. */
export const cleatsMade = ['wood', 'plywood', 'aluminium'] as const satisfies CleatMade[];

/** The cleats in words. */
export const cleatWords: Readonly<Record<CleatMade, string>> = {
  wood: 'solid wood, bevelled',
  plywood: 'plywood, bevelled',
  aluminium: 'an aluminium rail',
};

/** The cleat on the wall. */
export type Cleat = {
  readonly made: CleatMade;
  readonly thicknessUm: number;
  readonly heightUm: number;
  /** Null: nearly as long as the piece is wide. */
  readonly lengthUm: number | null;
  /** From the top of the piece down to the middle of the cleat. */
  readonly fromTopUm: number;
  /** The bevel out of the level: 0 for a level rail, 45 for the usual cleat. */
  readonly bevelDeg: number;
  /** What the maker of a rail rates its whole length for; null when it is not a rail. */
  readonly railRatedG: number | null;
};

/** The kinds of anchor, by how they hold. */
export const anchorKinds = ['screw_anchor', 'sleeve', 'wedge', 'toggle'] as const;

/** One of the {@link anchorKinds}. */
export type AnchorKind = (typeof anchorKinds)[number];

/** The anchors in words. */
export const anchorWords: Readonly<Record<AnchorKind, string>> = {
  screw_anchor: 'screw anchor',
  sleeve: 'sleeve anchor',
  wedge: 'wedge anchor',
  toggle: 'toggle',
};

/** Screws into wood, or anchors by what their maker rates them for. */
export type FixingAsked =
  | {
      readonly by: 'screw';
      readonly screw: ScrewName;
      readonly lengthUm: number;
      readonly isStainless: boolean;
      /** How many stand in one stud; null: as many as it takes. */
      readonly perUpright: number | null;
    }
  | {
      readonly by: 'anchor';
      readonly anchor: AnchorKind;
      /** What one is rated for in this wall, pulled straight out, and sideways. */
      readonly ratedPullG: number;
      readonly ratedPushG: number;
      /** How deep its maker wants it. */
      readonly embedUm: number;
      /** How near to each other its maker lets two of them be. */
      readonly leastApartUm: number;
      readonly isStainless: boolean;
      /** How many stand in one upright or, in masonry, along the cleat; null: as many as it takes. */
      readonly perUpright: number | null;
    };

/** How a piece is to hang, as somebody asks for it. */
export type HangingAsked = {
  /** From the left end of the wall to the middle of the piece. */
  readonly middleUm: number;
  readonly height: HeightBy;
  readonly cleat: Cleat;
  readonly fixing: FixingAsked;
  /** How thick wood is that was built in; null when none was. */
  readonly backingUm: number | null;
  /** How many times over the fixings are to bear it: from 2 to 4. */
  readonly safetyFactor: number;
};

/** The safety factors that can be asked for; three where nothing else is said. */
export const safetyFactors = [2, 3, 4] as const;
/** What is asked where nothing else is said. */
export const usualSafetyFactor = 3;
/** The least over people, in public places, and in board alone. */
export const carefulSafetyFactor = 4;
