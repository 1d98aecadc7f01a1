import {
  formatLength,
  lengthRefusalMessage,
  parseLength,
  type LengthSystem,
} from '@/lib/units/rules';
import {
  openingKinds,
  tilePlaces,
  type Opening,
  type OpeningKind,
  type SetTile,
  type TilePlace,
  type TileWallAsked,
} from '@/lib/walls/rules/tiles/asked';

/** An opening as it is typed. */
export type OpeningTyped = Readonly<{
  id: number;
  kind: OpeningKind;
  left: string;
  bottom: string;
  width: string;
  height: string;
}>;

/** A wall as it is typed into the board. */
export type WallTyped = Readonly<{
  width: string;
  height: string;
  tileWidth: string;
  tileHeight: string;
  joint: string;
  variation: string;
  rowsFrom: 'middle' | 'bottom';
  isHandMade: boolean;
  spare: string;
  setSpare: string;
  places: readonly TilePlace[];
  openings: readonly OpeningTyped[];
}>;

const usual = {
  in: { width: '96 in', height: '18 in', tile: '6 in', joint: '3/16 in' },
  mm: { width: '2400 mm', height: '450 mm', tile: '150 mm', joint: '5 mm' },
} as const;

/** What the board begins with: a wall that was kept, or a usual one. */
export function typedAtFirst(asked: TileWallAsked | null, system: LengthSystem): WallTyped {
  const { width, height, tile, joint } = usual[system];
  const told = (um: number) => (um === 0 ? '0' : formatLength(um, system));
  if (!asked) {
    return {
      ...{ width, height, tileWidth: tile, tileHeight: tile, joint, variation: '' },
      ...{ rowsFrom: 'bottom', isHandMade: true, spare: '10', setSpare: '10' },
      ...{ places: [], openings: [] },
    };
  }
  const { rowsFrom, isHandMade, places } = asked;
  return {
    ...{ width: told(asked.widthUm), height: told(asked.heightUm), joint: told(asked.jointUm) },
    ...{ tileWidth: told(asked.tileWidthUm), tileHeight: told(asked.tileHeightUm) },
    variation: asked.variationUm === 0 ? '' : told(asked.variationUm),
    ...{ rowsFrom, isHandMade, places },
    ...{ spare: asked.sparePercent, setSpare: asked.setSparePercent },
    openings: asked.openings.map((opening, id) => ({
      ...{ id, kind: opening.kind, left: told(opening.leftUm), bottom: told(opening.bottomUm) },
      ...{ width: told(opening.widthUm), height: told(opening.heightUm) },
    })),
  };
}

/** What stands in the board's form now. */
export function typedIn(form: FormData, before: WallTyped): WallTyped {
  const text = (name: string) => {
    const value = form.get(name);
    return typeof value === 'string' ? value : '';
  };
  return {
    ...{ width: text('width'), height: text('height'), joint: text('joint') },
    ...{ tileWidth: text('tileWidth'), tileHeight: text('tileHeight') },
    ...{ variation: text('variation'), spare: text('spare'), setSpare: text('setSpare') },
    rowsFrom: text('rowsFrom') === 'middle' ? 'middle' : 'bottom',
    isHandMade: form.has('isHandMade'),
    places: tilePlaces.filter((place) => form.getAll('places').includes(place)),
    openings: before.openings.map(({ id }) => ({
      id,
      kind: openingKinds.find((kind) => kind === text(`kind${id}`)) ?? 'other',
      ...{ left: text(`left${id}`), bottom: text(`bottom${id}`) },
      ...{ width: text(`width${id}`), height: text(`height${id}`) },
    })),
  };
}

/** What is wrong with what was typed, by the name of its field. */
export type Faults = Readonly<Record<string, string>>;

/**
 * Reads the board: the wall as it is asked, or what is wrong by field.
 *
 * A joint, how tiles differ, and where an opening begins may be nothing at all.
 */
export function readWall(
  typed: WallTyped,
  sets: readonly SetTile[],
  system: LengthSystem,
): { asked: TileWallAsked | null; faults: Faults } {
  const faults: Record<string, string> = {};
  const length = (name: string, text: string) => {
    const read = parseLength(text, system);
    if (!read.ok) faults[name] = lengthRefusalMessage(read.refusal);
    return read.ok ? read.value : 0;
  };
  const orNothing = (name: string, text: string) =>
    /^0*$/.test(text.trim()) ? 0 : length(name, text);
  const openings = typed.openings.map(({ id, kind, left, bottom, width, height }): Opening => ({
    kind,
    leftUm: orNothing(`left${id}`, left),
    bottomUm: orNothing(`bottom${id}`, bottom),
    widthUm: length(`width${id}`, width),
    heightUm: length(`height${id}`, height),
  }));
  const { rowsFrom, isHandMade, places } = typed;
  const asked: TileWallAsked = {
    widthUm: length('width', typed.width),
    heightUm: length('height', typed.height),
    tileWidthUm: length('tileWidth', typed.tileWidth),
    tileHeightUm: length('tileHeight', typed.tileHeight),
    jointUm: orNothing('joint', typed.joint),
    variationUm: orNothing('variation', typed.variation),
    ...{ rowsFrom, isHandMade, places, sets, openings },
    sparePercent: percentOf('spare', typed.spare, faults),
    setSparePercent: percentOf('setSpare', typed.setSpare, faults),
  };
  return { asked: Object.keys(faults).length === 0 ? asked : null, faults };
}

function percentOf(name: string, text: string, faults: Record<string, string>): string {
  const typed = text.trim();
  const isPercent = /^\d{1,3}(\.\d{1,4})?$/.test(typed) && Number(typed) <= 100;
  if (!isPercent) faults[name] = 'Write a percentage from 0 to 100, such as 10.';
  return isPercent ? typed : '0';
}
