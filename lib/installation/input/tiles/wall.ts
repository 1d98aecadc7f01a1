import { z } from 'zod';
import { saidLine } from '@/lib/commissions/input/atoms';
import { mostUm } from '@/lib/units/rules';
import {
  openingKinds,
  openingsMost,
  setsMost,
  tilePlaces,
  type TileWallAsked,
} from '@/lib/walls/rules/tiles/asked';

const sizeUm = z.int().min(1).max(mostUm);
const fromUm = z.int().min(0).max(mostUm);
const percent = z.string().regex(/^\d{1,3}(\.\d{1,4})?$/, 'Write a percentage from 0 to 100.');
const cells = z.int().min(1).max(20);
const place = z.int().min(0).max(10_000);

const setTile = z.strictObject({
  name: z.string().trim().min(1, 'Name the set tile.').max(60, 'Name it in fewer words.'),
  ...{ across: cells, down: cells, column: place, row: place },
});

const opening = z.strictObject({
  kind: z.enum(openingKinds),
  ...{ leftUm: fromUm, bottomUm: fromUm, widthUm: sizeUm, heightUm: sizeUm },
});

/** A wall to be tiled, as the drawing board sends it and as it is kept. */
export const tileWallAsked = z.strictObject({
  ...{ widthUm: sizeUm, heightUm: sizeUm, tileWidthUm: sizeUm, tileHeightUm: sizeUm },
  ...{ jointUm: fromUm, variationUm: fromUm },
  rowsFrom: z.enum(['middle', 'bottom']),
  isHandMade: z.boolean(),
  ...{ sparePercent: percent, setSparePercent: percent },
  places: z.array(z.enum(tilePlaces)).max(tilePlaces.length),
  sets: z.array(setTile).max(setsMost, `At most ${setsMost} set tiles on one wall.`),
  openings: z.array(opening).max(openingsMost, `At most ${openingsMost} openings in one wall.`),
}) satisfies z.ZodType<TileWallAsked>;

const unread = 'The drawing could not be read. Load the page again, please.';
/** What two hundred set tiles with names take, in characters. */
const askedLengthMost = 40_000;

const askedText = z
  .string()
  .max(askedLengthMost, unread)
  .transform((text, context): TileWallAsked => {
    const read = tileWallAsked.safeParse(parsedOrNull(text));
    if (read.success) return read.data;
    const said = read.error.issues.find(({ code }) => code === 'too_big' || code === 'too_small');
    const message = said?.path.includes('sets') ? said.message : unread;
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  });

function parsedOrNull(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}

/** A wall with its tiles, to be kept. */
export const keepTileWallInput = z.strictObject({
  requestKey: z.uuid(),
  commissionId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
  title: saidLine('Name the wall, such as “kitchen, behind the range”.', 120),
  asked: askedText,
});
/** What {@link keepTileWallInput} reads. */
export type KeepTileWallInput = z.output<typeof keepTileWallInput>;
