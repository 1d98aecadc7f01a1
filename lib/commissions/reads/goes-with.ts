import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { agreementForCollector } from '@/lib/commissions/reads/agreement/agreements';
import { readShown, type ShownWhole } from '@/lib/commissions/reads/colours/shown';
import { listProgress } from '@/lib/commissions/reads/course/progress';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';

/** What is known of a commissioned piece when it leaves: for its certificate and its care sheet. */
export type GoesWith = {
  /** Clay, glazes and cones of the tiles that were approved; empty while none is. */
  medium: string;
  /** Grams, as it was weighed last; null while it was not. */
  weightG: number | null;
  /** The last picture of the making, by its file. */
  pictureFileId: string | null;
  agreedOn: Day | null;
  /** The year it was handed over; null before. */
  year: number | null;
  isSetInWall: boolean;
};

/** Reads what goes with a commissioned piece. */
export async function readGoesWith(actor: Actor, sheet: Sheet): Promise<GoesWith> {
  assertAllowed(actor, 'commissions.see');
  const [shown, progress, agreement] = await Promise.all([
    readShown(db(), sheet.id),
    listProgress(actor, sheet.id),
    agreementForCollector(sheet.id),
  ]);
  const handedOn = sheet.facts.handOver?.handedOn;
  return {
    medium: mediumOf(shown),
    weightG: progress.findLast(({ weightG }) => weightG !== null)?.weightG ?? null,
    pictureFileId: progress.findLast(({ kind }) => kind === 'picture')?.fileId ?? null,
    agreedOn: agreement?.agreedOn ?? null,
    year: handedOn ? Number(handedOn.slice(0, 4)) : null,
    isSetInWall: agreement?.taxAs === 'set_in_pieces',
  };
}

function mediumOf(shown: readonly ShownWhole[]): string {
  const tiles = shown.flatMap(({ yes, tile }) => (yes && tile ? [tile] : []));
  const cones = once(tiles.map(({ cone }) => cone)).map((cone) => `cone ${cone}`);
  return [
    ...once(tiles.map(({ body }) => body ?? '')),
    ...once(tiles.map(glazesOf)),
    ...cones,
  ].join(', ');
}

function glazesOf({ glazes }: { glazes: string }): string {
  return glazes;
}

function once(words: readonly string[]): string[] {
  return [...new Set(words.filter((each) => each !== ''))];
}
