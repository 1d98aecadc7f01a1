import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Lab3 } from '@/lib/commissions/rules/colours/words';
import type { ShadeContent } from '@/lib/commissions/rules/content';
import { fileToKeep, type ReadyPicture } from '@/lib/files/ready';
import { keepFile } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';

/** The range of a tile as it comes in: two further pictures, and L*, a*, b* as decimal text. */
export type RangeToKeep = {
  lightPicture?: ReadyPicture | null | undefined;
  darkPicture?: ReadyPicture | null | undefined;
  light?: Lab3 | null | undefined;
  middle?: Lab3 | null | undefined;
  dark?: Lab3 | null | undefined;
};

/** A picture that is kept: its id, and the hash of its bytes. */
export type KeptPicture = { fileId: string; fileSha256: string };

/** One shade as it is kept: what a yes binds to, and the picture itself. */
export type KeptShade = ShadeContent & { fileId: string | null };

/**
 * Keeps the pictures of a range and gives its shades, light first; joins the caller's transaction.
 *
 * @returns none for a tile alone: one without a further picture and without any measure
 */
export async function keepRange(
  tx: Tx,
  doer: Doer,
  tile: RangeToKeep,
  middle: KeptPicture,
): Promise<KeptShade[]> {
  const light = tile.lightPicture ? await keepPicture(tx, doer, tile.lightPicture) : null;
  const dark = tile.darkPicture ? await keepPicture(tx, doer, tile.darkPicture) : null;
  const isRange =
    light !== null || dark !== null || Boolean(tile.light ?? tile.middle ?? tile.dark);
  if (!isRange) return [];
  const of = (
    shade: ShadeContent['shade'],
    file: KeptPicture | null,
    lab: Lab3 | null | undefined,
  ) => ({
    ...{ shade, fileId: file?.fileId ?? null, fileSha256: file?.fileSha256 ?? null },
    lab: lab ? fixed(lab) : null,
  });
  return [
    of('light', light, tile.light),
    of('middle', middle, tile.middle),
    of('dark', dark, tile.dark),
  ];
}

/** Three places, as the database keeps them, so that the same measure reads the same. */
function fixed([l, a, b]: Lab3): [string, string, string] {
  const three = (text: string) => {
    const [whole = '0', part = ''] = text.split('.');
    return `${whole}.${part.padEnd(3, '0')}`;
  };
  return [three(l), three(a), three(b)];
}

/** Keeps one picture under the hash of its bytes; joins the caller's transaction. */
export async function keepPicture(tx: Tx, doer: Doer, picture: ReadyPicture): Promise<KeptPicture> {
  const kept = await keepFile(tx, fileToKeep(picture, doer.at));
  return { fileId: kept.id, fileSha256: kept.sha256 };
}
