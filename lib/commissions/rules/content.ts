/**
 * The exact bytes of what is approved or signed, field by field: each by its length in bytes, a
 * colon, itself and a comma, so that no two different papers ever read the same.
 *
 * @source the netstring form, so that nothing in a text can be mistaken for a border
 * @example contentOf('sketch', ['A']) // '6:sketch,1:A,'
 */
export function contentOf(kind: string, fields: readonly string[]): string {
  return [kind, ...fields].map(field).join('');
}

function field(text: string): string {
  return `${new TextEncoder().encode(text).length}:${text},`;
}

/** A spot in a picture, in whole thousandths from its upper left corner. */
export type Spot = { readonly xPermille: number; readonly yPermille: number };

/** A colour area of a sketch: its name and a spot in it. */
export type SketchAreaContent = Spot & { readonly name: string };

/** All that a yes to a sketch is a yes to. */
export type SketchContent = {
  readonly letter: string;
  readonly fileSha256: string;
  readonly note: string;
  readonly scale: string;
  readonly areas: readonly SketchAreaContent[];
};

/** What a yes to a sketch binds to, as text to be hashed. */
export function sketchContent(sketch: SketchContent): string {
  const { letter, fileSha256, note, scale, areas } = sketch;
  const places = areas.flatMap((area) => [
    area.name,
    String(area.xPermille),
    String(area.yPermille),
  ]);
  return contentOf('sketch', [letter, fileSha256, note, scale, String(areas.length), ...places]);
}

/** One of the range a tile is fired in; the colour as L*, a*, b*, where measured. */
export type ShadeContent = {
  readonly shade: 'light' | 'middle' | 'dark';
  readonly fileSha256: string | null;
  readonly lab: readonly [string, string, string] | null;
};

/** All that a yes to a colour tile is a yes to. */
export type ColourTileContent = {
  readonly number: number;
  readonly fileSha256: string;
  readonly glazes: string;
  /** The name of the clay body; empty while it is not known. */
  readonly body: string;
  readonly coats: number | null;
  readonly cone: string;
  readonly firing: string;
  readonly areas: readonly string[];
  readonly shades: readonly ShadeContent[];
};

/** What a yes to a colour tile binds to, as text to be hashed. */
export function colourTileContent(tile: ColourTileContent): string {
  const { number, fileSha256, glazes, body, coats, cone, firing, areas, shades } = tile;
  const range = shades.flatMap(({ shade, fileSha256: picture, lab }) => [
    shade,
    picture ?? '',
    ...(lab?.map(inThousandths) ?? ['', '', '']),
  ]);
  return contentOf('colour tile', [
    ...[String(number), fileSha256, glazes, body, coats === null ? '' : String(coats)],
    ...[cone, firing, String(areas.length), ...areas, String(shades.length), ...range],
  ]);
}

/** So that a colour reads the same as it was typed and as it is kept: '52.1' and '52.100'. */
function inThousandths(figure: string): string {
  return String(Math.round(Number(figure) * 1000));
}
