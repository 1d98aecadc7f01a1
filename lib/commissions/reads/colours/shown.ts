import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import {
  fileColumns,
  shownPicture,
  type CommissionPictureShown,
} from '@/lib/commissions/reads/picture';
import type { Spot } from '@/lib/commissions/rules/content';
import type { ApprovalWay } from '@/lib/commissions/rules/words';
import type { Shade } from '@/lib/colour/rules/words';
import { dayFromDate, type Day } from '@/lib/dates/rules';

/** Changes that were asked for, with their spots. */
export type ChangesTold = {
  askedBy: string;
  askedOn: Day;
  how: ApprovalWay;
  words: string;
  round: number | null;
  feeCents: bigint;
  spots: readonly (Spot & { words: string })[];
};

/** One of the range of a tile; L*, a*, b* where it was measured. */
export type ShadeTold = {
  shade: Shade;
  picture: CommissionPictureShown | null;
  lab: readonly [number, number, number] | null;
};

/** A fired part that was held against a tile. */
export type FiredTold = {
  where: string;
  deltaE: number;
  limit: number;
  nearest: Shade;
  lab: readonly [number, number, number];
  measuredOn: Day;
};

/** What a colour tile says besides its picture. */
export type TileTold = {
  glazes: string;
  body: string | null;
  coats: number | null;
  cone: string;
  firing: string;
  batch: string | null;
  keptAt: string;
  /** The names of the areas it is for. */
  areas: readonly string[];
  shades: readonly ShadeTold[];
  given: { on: Day; how: string } | null;
  fired: readonly FiredTold[];
};

/** What a sketch says besides its picture. */
export type SketchTold = {
  note: string;
  scale: string;
  areas: readonly (Spot & { name: string })[];
};

/** A yes with what it binds to. */
export type YesToldWhole = {
  approvedBy: string;
  how: ApprovalWay;
  approvedOn: Day;
  light: string;
  isSigned: boolean;
};

/** A sketch or a colour tile with everything that was said of it. */
export type ShownWhole = {
  id: string;
  label: string;
  shownOn: Day;
  /** What a yes binds to. */
  contentSha256: string;
  fileId: string;
  picture: CommissionPictureShown;
  yes: YesToldWhole | null;
  changes: readonly ChangesTold[];
} & (
  | { what: 'sketch'; sketch: SketchTold; tile: null }
  | { what: 'colour_tile'; sketch: null; tile: TileTold }
);

const approvals = {
  select: { approvedBy: true, how: true, approvedOn: true, light: true, signatureId: true },
  take: 1,
} as const;
const changesAsked = {
  select: {
    ...{ askedBy: true, askedOn: true, how: true, words: true, round: true, feeCents: true },
    spots: {
      select: { xPermille: true, yPermille: true, words: true },
      orderBy: { position: 'asc' },
    },
  },
  orderBy: [{ at: 'asc' }, { id: 'asc' }],
} as const satisfies Prisma.Sketch$changesAskedArgs;
const common = {
  ...{ id: true, shownOn: true, contentSha256: true, fileId: true },
  file: { select: fileColumns },
  approvals,
  changesAsked,
} as const;
const sketchColumns = {
  ...common,
  ...{ letter: true, note: true, scale: true },
  areas: {
    select: { name: true, xPermille: true, yPermille: true },
    orderBy: { position: 'asc' },
  },
} as const satisfies Prisma.SketchSelect;
const tileColumns = {
  ...common,
  ...{ number: true, glazes: true, coats: true, cone: true, firing: true, keptAt: true },
  body: { select: { name: true } },
  batch: { select: { number: true, glaze: true } },
  areas: { select: { name: true }, orderBy: { position: 'asc' } },
  shades: {
    select: { shade: true, lStar: true, aStar: true, bStar: true, file: { select: fileColumns } },
    orderBy: { shade: 'asc' },
  },
  given: { select: { givenOn: true, how: true } },
  fired: {
    select: {
      ...{ where: true, deltaE: true, limitDeltaE: true, nearest: true, measuredOn: true },
      ...{ lStar: true, aStar: true, bStar: true },
    },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  },
} as const satisfies Prisma.ColourTileSelect;

type SketchRow = Prisma.SketchGetPayload<{ select: typeof sketchColumns }>;
type TileRow = Prisma.ColourTileGetPayload<{ select: typeof tileColumns }>;

/**
 * Everything that was shown of a commission, as it was shown: the sketches by letter, then the tiles,
 * from dark to light within an area where they were measured.
 *
 * The pages ask for leave before; the collector's own page by its link.
 */
export async function readShown(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<ShownWhole[]> {
  const sketches = await from.sketch.findMany({
    where: { commissionId },
    select: sketchColumns,
    orderBy: [{ at: 'asc' }, { letter: 'asc' }],
  });
  const tiles = await from.colourTile.findMany({
    where: { commissionId },
    select: tileColumns,
    orderBy: { number: 'asc' },
  });
  return [...sketches.map(sketchOf), ...tiles.map(tileOf)];
}

function sketchOf(row: SketchRow): ShownWhole {
  const { letter: label, note, scale, areas } = row;
  const picture = shownPicture(row.file, `Sketch ${label}`);
  return {
    ...commonOf(row),
    label,
    picture,
    what: 'sketch',
    sketch: { note, scale, areas },
    tile: null,
  };
}

function tileOf(row: TileRow): ShownWhole {
  const { number, glazes, coats, cone, firing, keptAt, body, batch, given } = row;
  const label = String(number);
  const tile: TileTold = {
    ...{ glazes, coats, cone, firing, keptAt },
    body: body?.name ?? null,
    batch: batch && `${batch.number}, ${batch.glaze}`,
    areas: row.areas.map(({ name }) => name),
    shades: row.shades.map(({ shade, file, ...star }) => ({
      shade,
      picture: file && shownPicture(file, `Colour tile ${label}, ${shade}`),
      lab: labOf(star),
    })),
    given: given && { on: dayFromDate(given.givenOn), how: given.how },
    fired: row.fired.map(({ where, deltaE, limitDeltaE, nearest, measuredOn, ...star }) => ({
      ...{ where, nearest, deltaE: deltaE.toNumber(), limit: limitDeltaE.toNumber() },
      lab: labOf(star) ?? [0, 0, 0],
      measuredOn: dayFromDate(measuredOn),
    })),
  };
  const picture = shownPicture(row.file, `Colour tile ${label}`);
  return { ...commonOf(row), label, picture, what: 'colour_tile', sketch: null, tile };
}

function commonOf(row: SketchRow | TileRow) {
  const [yes] = row.approvals;
  return {
    ...{ id: row.id, contentSha256: row.contentSha256, fileId: row.fileId },
    shownOn: dayFromDate(row.shownOn),
    yes: yes
      ? {
          ...{ approvedBy: yes.approvedBy, how: yes.how, light: yes.light },
          approvedOn: dayFromDate(yes.approvedOn),
          isSigned: yes.signatureId !== null,
        }
      : null,
    changes: row.changesAsked.map(({ askedOn, ...changes }) => ({
      ...changes,
      askedOn: dayFromDate(askedOn),
    })),
  };
}

type Star = { toNumber: () => number } | null;

function labOf({ lStar, aStar, bStar }: { lStar: Star; aStar: Star; bStar: Star }) {
  if (!lStar || !aStar || !bStar) return null;
  return [lStar.toNumber(), aStar.toNumber(), bStar.toNumber()] as const;
}
