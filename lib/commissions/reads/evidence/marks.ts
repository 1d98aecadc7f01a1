import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { sha256Of } from '@/lib/commissions/reads/content';
import {
  signatureOf,
  signatureSelect,
  type SignatureShown,
} from '@/lib/commissions/reads/agreement/agreements';
import { colourTileContent, sketchContent } from '@/lib/commissions/rules/content';
import type { Mark } from '@/lib/commissions/rules/evidence/chapters';

/** The mark of something that was shown, computed anew, and the name under its yes. */
export type ShownMarked = { readonly mark: Mark; readonly signature: SignatureShown | null };

/** What was shown, by its id. */
export type ShownMarks = ReadonlyMap<string, ShownMarked>;

const approvals = {
  select: { contentSha256: true, signature: { select: signatureSelect } },
  take: 1,
} as const;

const tileSelect = {
  ...{ id: true, number: true, fileId: true, fileSha256: true, glazes: true, coats: true },
  ...{ cone: true, firing: true, contentSha256: true, approvals },
  body: { select: { name: true } },
  areas: { select: { name: true }, orderBy: { position: 'asc' } },
  shades: {
    select: { shade: true, fileId: true, lStar: true, aStar: true, bStar: true },
    orderBy: { shade: 'asc' },
  },
} as const satisfies Prisma.ColourTileSelect;

type TileRow = Prisma.ColourTileGetPayload<{ select: typeof tileSelect }>;

/**
 * Computes the mark of everything that was shown anew: the bytes of its pictures are hashed again,
 * then its content with them, and that is held against what the yes was given to.
 */
export async function readShownMarks(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<ShownMarks> {
  const sketches = await from.sketch.findMany({
    where: { commissionId },
    select: {
      ...{ id: true, letter: true, fileId: true, note: true, scale: true, contentSha256: true },
      areas: {
        select: { name: true, xPermille: true, yPermille: true },
        orderBy: { position: 'asc' },
      },
      approvals,
    },
  });
  const tiles = await from.colourTile.findMany({ where: { commissionId }, select: tileSelect });
  const files = [
    ...[...sketches, ...tiles].map(({ fileId }) => fileId),
    ...tiles.flatMap(({ shades }) => shades.flatMap(({ fileId }) => fileId ?? [])),
  ];
  const hashes = await hashesOf(from, files);
  const hashOf = (fileId: string) => hashes.get(fileId) ?? '';
  return new Map([
    ...sketches.map(({ fileId, ...row }) => {
      const anew = sha256Of(sketchContent({ ...row, fileSha256: hashOf(fileId) }));
      return [row.id, markedBy(row, anew)] as const;
    }),
    ...tiles.map((row) => [row.id, markedBy(row, sha256Of(tileAnew(row, hashOf)))] as const),
  ]);
}

function tileAnew(row: TileRow, hashOf: (fileId: string) => string): string {
  return colourTileContent({
    ...row,
    fileSha256: hashOf(row.fileId),
    body: row.body?.name ?? '',
    areas: row.areas.map(({ name }) => name),
    shades: row.shades.map(({ shade, fileId, lStar, aStar, bStar }) => ({
      shade,
      fileSha256: fileId && hashOf(fileId),
      lab: lStar && aStar && bStar ? [String(lStar), String(aStar), String(bStar)] : null,
    })),
  });
}

type Approved = {
  contentSha256: string;
  approvals: {
    contentSha256: string;
    signature: Prisma.SignatureGetPayload<{ select: typeof signatureSelect }> | null;
  }[];
};

function markedBy({ contentSha256, approvals: [yes] }: Approved, anew: string) {
  const sha256 = yes?.contentSha256 ?? contentSha256;
  const fits = anew === contentSha256 && sha256 === contentSha256;
  return { mark: { sha256, fits }, signature: yes?.signature ? signatureOf(yes.signature) : null };
}

/** The SHA-256 of files, computed from their bytes now. */
async function hashesOf(
  from: Prisma.TransactionClient,
  fileIds: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  if (fileIds.length === 0) return new Map();
  const rows = await from.$queryRaw`
    SELECT id, encode(sha256(bytes), 'hex') AS sha256 FROM "StoredFile"
    WHERE id IN (${Prisma.join(fileIds.map((id) => Prisma.sql`${id}::uuid`))})`;
  const read = z.array(z.object({ id: z.uuid(), sha256: z.string() })).parse(rows);
  return new Map(read.map(({ id, sha256 }) => [id, sha256]));
}
