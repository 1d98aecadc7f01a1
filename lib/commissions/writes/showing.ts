import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import type {
  ApproveInput,
  ShowColourTileInput,
  ShowSketchInput,
} from '@/lib/commissions/input/showing';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { colourTileContent, sketchContent } from '@/lib/commissions/rules/content';
import { nextLetter, type ApprovalWay } from '@/lib/commissions/rules/words';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { keepFile } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { carryOut, findOpen, tellHistory, type AnyRefusal } from './carry-out';
import { sha256Of } from './content';
import { fileToKeep, readyPicture, type ReadyPicture } from './pictures';

/** A sketch or a colour tile that was shown: its id, what people call it, and its bytes' hash. */
export type Shown = { id: string; label: string; fileSha256: string; commissionNumber: number };

/** A sketch to show; its letter is given by the order. */
export type SketchToShow = {
  commissionId: string;
  picture: ReadyPicture;
  note: string;
  shownOn: Day;
};

/**
 * Shows a sketch: A first, then B.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, unknown, ended early, handed over, a day to come
 */
export async function showSketch(
  doer: Doer,
  input: ShowSketchInput,
): Promise<Result<Shown, AnyRefusal>> {
  const permission = 'commissions.write';
  const allowed = allow(doer.actor, permission);
  if (!allowed.ok) return allowed;
  const ready = await readyPicture(input.picture);
  if (!ready.ok) return ready;
  const { requestKey, commissionId, note, shownOn } = input;
  const shown = { commissionId, note, shownOn };
  const said = { ...shown, sha256: ready.value.sha256 };
  const command = { name: 'showSketch', permission, key: requestKey, input: said } as const;
  return carryOut(doer, command, (tx) => addSketch(tx, doer, { ...shown, picture: ready.value }));
}

/** The step of {@link showSketch}: joins the caller's transaction, asks nobody for leave. */
export async function addSketch(
  tx: Tx,
  doer: Doer,
  sketch: SketchToShow,
): Promise<Result<Shown, CommissionRefusal>> {
  const found = await findOpen(tx, doer, sketch.commissionId);
  if (!found.ok) return found;
  const { commissionId, note, shownOn } = sketch;
  if (shownOn > found.value.today) return refuse({ code: 'day_to_come', on: shownOn });
  const letter = nextLetter(found.value.facts.sketches.length);
  const file = await keepPicture(tx, doer, sketch.picture);
  const { id } = await tx.sketch.create({
    data: {
      ...{ commissionId, letter, note, ...file, at: doer.at },
      contentSha256: sha256Of(sketchContent({ letter, note, scale: '', areas: [], ...file })),
      shownOn: dateFromDay(shownOn),
    },
    select: { id: true },
  });
  const facts = { letter, sha256: file.fileSha256 };
  await tellHistory(tx, doer, { commissionId, did: `showed sketch ${letter}`, facts });
  const { number: commissionNumber } = found.value;
  return ok({ id, label: letter, fileSha256: file.fileSha256, commissionNumber });
}

/** A colour tile to show; its number is given by the order. */
export type ColourTileToShow = {
  commissionId: string;
  picture: ReadyPicture;
  glazes: string;
  shownOn: Day;
};

/** Shows a colour tile, 1 first; refuses as {@link showSketch} does. */
export async function showColourTile(
  doer: Doer,
  input: ShowColourTileInput,
): Promise<Result<Shown, AnyRefusal>> {
  const permission = 'commissions.write';
  const allowed = allow(doer.actor, permission);
  if (!allowed.ok) return allowed;
  const ready = await readyPicture(input.picture);
  if (!ready.ok) return ready;
  const { requestKey, commissionId, glazes, shownOn } = input;
  const shown = { commissionId, glazes, shownOn };
  const said = { ...shown, sha256: ready.value.sha256 };
  const command = { name: 'showColourTile', permission, key: requestKey, input: said } as const;
  return carryOut(doer, command, (tx) =>
    addColourTile(tx, doer, { ...shown, picture: ready.value }),
  );
}

/** The step of {@link showColourTile}: joins the caller's transaction, asks nobody for leave. */
export async function addColourTile(
  tx: Tx,
  doer: Doer,
  tile: ColourTileToShow,
): Promise<Result<Shown, CommissionRefusal>> {
  const found = await findOpen(tx, doer, tile.commissionId);
  if (!found.ok) return found;
  const { commissionId, glazes, shownOn } = tile;
  if (shownOn > found.value.today) return refuse({ code: 'day_to_come', on: shownOn });
  const number = found.value.facts.colourTiles.length + 1;
  const file = await keepPicture(tx, doer, tile.picture);
  const { id } = await tx.colourTile.create({
    data: {
      ...{ commissionId, number, glazes, ...file, at: doer.at },
      contentSha256: sha256Of(colourTileContent({ ...bareTile, number, glazes, ...file })),
      shownOn: dateFromDay(shownOn),
    },
    select: { id: true },
  });
  const facts = { number, glazes, sha256: file.fileSha256 };
  await tellHistory(tx, doer, { commissionId, did: `showed colour tile ${number}`, facts });
  const { number: commissionNumber } = found.value;
  return ok({ id, label: String(number), fileSha256: file.fileSha256, commissionNumber });
}

const bareTile = { body: '', coats: null, cone: '', firing: '', areas: [], shades: [] };

async function keepPicture(tx: Tx, doer: Doer, picture: ReadyPicture) {
  const kept = await keepFile(tx, fileToKeep(picture, doer.at));
  return { fileId: kept.id, fileSha256: kept.sha256 };
}

/** A yes that was written down. */
export type YesWritten = { approvalId: string; commissionNumber: number };

/** A yes to exactly one sketch or colour tile, as it was looked at. */
export type YesToWrite = {
  commissionId: string;
  what: 'sketch' | 'colour_tile';
  shownId: string;
  fileSha256: string;
  approvedBy: string;
  how: ApprovalWay;
  approvedOn: Day;
};

/**
 * Writes down a yes. It binds to the bytes of the picture that was looked at.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, handed over, nothing shown of that letter, another picture, approved already, a day to
 *   come, a day before it was shown
 * @example two people write down the same yes at once: one is kept, the other is told who and when
 */
export async function approve(
  doer: Doer,
  input: ApproveInput,
): Promise<Result<YesWritten, AnyRefusal>> {
  const { requestKey, ...yes } = input;
  const command = {
    name: 'approve',
    permission: 'commissions.write',
    key: requestKey,
    input: yes,
  } as const;
  return carryOut(doer, command, (tx) => addApproval(tx, doer, yes));
}

/** The step of {@link approve}: joins the caller's transaction, asks nobody for leave. */
export async function addApproval(
  tx: Tx,
  doer: Doer,
  yes: YesToWrite,
): Promise<Result<YesWritten, CommissionRefusal>> {
  const found = await findOpen(tx, doer, yes.commissionId);
  if (!found.ok) return found;
  const shown = await findShown(tx, yes);
  const refusal = refusalToApprove(shown, yes, found.value.today);
  if (refusal) return refuse(refusal);
  const { commissionId, fileSha256, approvedBy, how, what, shownId } = yes;
  const { id } = await tx.approval.create({
    data: {
      ...{ commissionId, fileSha256, approvedBy, how },
      contentSha256: shown?.contentSha256 ?? '',
      ...(what === 'sketch' ? { sketchId: shownId } : { colourTileId: shownId }),
      approvedOn: dateFromDay(yes.approvedOn),
      recordedById: doer.actor.id,
      at: doer.at,
    },
    select: { id: true },
  });
  const name = what === 'sketch' ? 'sketch' : 'colour tile';
  const did = `wrote down the yes to ${name} ${shown?.label ?? ''}`;
  const facts = { approvedBy, how, approvedOn: yes.approvedOn, sha256: fileSha256 };
  await tellHistory(tx, doer, { commissionId, did, facts });
  return ok({ approvalId: id, commissionNumber: found.value.number });
}

type ShownToAnswer = {
  label: string;
  contentSha256: string;
  fileSha256: string;
  shownOn: Day;
  yes: { approvedBy: string; approvedOn: Day } | null;
};

async function findShown(tx: Tx, yes: YesToWrite): Promise<ShownToAnswer | null> {
  const where = { id: yes.shownId, commissionId: yes.commissionId };
  const select = {
    fileSha256: true,
    contentSha256: true,
    shownOn: true,
    approvals: { select: { approvedBy: true, approvedOn: true }, take: 1 },
  };
  const row =
    yes.what === 'sketch'
      ? await tx.sketch.findFirst({ where, select: { ...select, letter: true } })
      : await tx.colourTile.findFirst({ where, select: { ...select, number: true } });
  if (!row) return null;
  const given = row.approvals[0];
  return {
    label: 'letter' in row ? row.letter : String(row.number),
    fileSha256: row.fileSha256,
    contentSha256: row.contentSha256,
    shownOn: dayFromDate(row.shownOn),
    yes: given ? { ...given, approvedOn: dayFromDate(given.approvedOn) } : null,
  };
}

function refusalToApprove(
  shown: ShownToAnswer | null,
  yes: YesToWrite,
  today: Day,
): CommissionRefusal | null {
  if (!shown) return { code: 'nothing_shown' };
  if (shown.fileSha256 !== yes.fileSha256) return { code: 'other_picture' };
  if (shown.yes) return { code: 'approved_already', ...shown.yes };
  if (yes.approvedOn > today) return { code: 'day_to_come', on: yes.approvedOn };
  if (yes.approvedOn < shown.shownOn) {
    return { code: 'before_it_was_shown', shownOn: shown.shownOn };
  }
  return null;
}
