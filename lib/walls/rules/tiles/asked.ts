/** A relief tile that is set among the field, over whole cells of it with the joints between. */
export type SetTile = {
  readonly name: string;
  /** How many cells it is wide and high. */
  readonly across: number;
  readonly down: number;
  /** Its lower left cell; the first column and the lowest row are 0. */
  readonly column: number;
  readonly row: number;
};

/** What an opening in the tiles is. */
export type OpeningKind = 'outlet' | 'window' | 'other';

/** The kinds of opening, as a form offers them. */
export const openingKinds = ['outlet', 'window', 'other'] as const satisfies readonly OpeningKind[];

/** A place where there are no tiles, from the lower left corner of the tiled field. */
export type Opening = {
  readonly kind: OpeningKind;
  readonly leftUm: number;
  readonly bottomUm: number;
  readonly widthUm: number;
  readonly heightUm: number;
};

/** What is asked of the tiles beside looks. */
export type TilePlace = 'heat' | 'water' | 'outdoors' | 'food';

/** The places that a tile is asked about, as a form offers them. */
export const tilePlaces = [
  'heat',
  'water',
  'outdoors',
  'food',
] as const satisfies readonly TilePlace[];

/** A wall to be tiled, as it is asked; whole micrometres. */
export type TileWallAsked = {
  readonly widthUm: number;
  readonly heightUm: number;
  readonly tileWidthUm: number;
  readonly tileHeightUm: number;
  readonly jointUm: number;
  /** Rows with equal cuts above and below, or a whole row at the bottom. */
  readonly rowsFrom: 'middle' | 'bottom';
  readonly isHandMade: boolean;
  /** How much the widest tile of the firing is wider than the narrowest; 0 where not known. */
  readonly variationUm: number;
  /** Decimal text, in a hundred. */
  readonly sparePercent: string;
  readonly setSparePercent: string;
  readonly places: readonly TilePlace[];
  readonly sets: readonly SetTile[];
  readonly openings: readonly Opening[];
};

/** The most tiles that one wall is laid out with. */
export const tilesMost = 10_000;
/** The most set tiles, and the most openings. */
export const setsMost = 200;
/** See {@link setsMost}. */
export const openingsMost = 20;
