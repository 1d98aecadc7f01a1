import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { livingId } from '@/lib/collectors/reads/group';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { moveStock } from '@/lib/stock/writes';
import type { GiveInput } from '../input/approval';
import { readShelfToHold } from '../reads';
import { decideHold } from '../rules';
import { checkDueOn, type AnyApprovalRefusal, type ApprovalRefusal } from '../rules/approval';
import { readChosen, type Chosen } from '../rules/chosen';
import { endHold } from '../writes';
import { carryOut } from './carry-out';
import { readyPictures, type ReadyPicture } from '@/lib/files/ready';
import { keepPictures } from './pictures';

/** A slip that was written, by its number. */
export type Given = { approvalId: string; number: number };

/**
 * Gives pieces home to be tried: they leave the counter's place, and are neither sold nor here.
 *
 * @returns the slip's number; refuses, in this order: a picture that cannot be kept, not allowed, a
 *   key used for something else, a hold that has ended, and then what {@link giveStep} refuses
 */
export async function giveOnApproval(
  doer: Doer,
  input: GiveInput,
): Promise<Result<Given, AnyApprovalRefusal>> {
  const pictures = await readyPictures(input.pictures);
  if (!pictures.ok) return pictures;
  const { requestKey, collectorId, pieces, holdId, dueOn, value, condition, security } = input;
  const hashes = pictures.value.map((picture) => picture.sha256);
  const said = { requestKey, collectorId, pieces, holdId, dueOn, value, condition, security };
  const command = { name: 'giveOnApproval', input: { ...said, hashes } };
  return carryOut<Given, ApprovalRefusal>(doer, command, async (tx) => {
    if (holdId !== '') {
      const freed = await endHold(tx, doer, { holdId, how: 'released' });
      if (!freed.ok) return refuse({ code: 'not_free', hold: freed.refusal });
    }
    return giveStep(tx, doer, {
      ...{ collectorId, chosen: readChosen(pieces), dueOn, valueCents: value },
      ...{ condition, security, pictures: pictures.value },
    });
  });
}

/** Pieces that go home to be tried, with what they are worth in cents and how they are. */
export type ToGive = {
  collectorId: string;
  chosen: readonly Chosen[];
  dueOn: Day;
  valueCents: bigint;
  condition: string;
  security: string;
  pictures: readonly ReadyPicture[];
};

/**
 * The step of {@link giveOnApproval}: joins the caller's transaction, asks nobody for leave.
 *
 * @returns refuses, in this order: an unknown collector, nothing chosen, a day that has passed or
 *   is too far, and for each piece one that is unknown or not free
 */
export async function giveStep(
  tx: Tx,
  doer: Doer,
  give: ToGive,
): Promise<Result<Given, ApprovalRefusal>> {
  const { counterId: fromId, timeZone } = await getGallery(tx);
  const todayOn = dayOf(doer.at, timeZone);
  const refusal = await refusalToGive(tx, give, todayOn);
  if (refusal) return refuse(refusal);
  const lines = await freeLines(tx, doer, { chosen: give.chosen, placeId: fromId });
  if (!lines.ok) return lines;

  const moved = await moveStock(tx, doer, {
    ...{ fromId, toId: await approvalPlace(tx), movedOn: todayOn, note: 'On approval' },
    pieces: lines.value.map(({ skuId, quantity, editionNumber }) => ({
      ...{ skuId, quantity },
      ...(editionNumber === null ? {} : { editionNumber }),
    })),
  });
  invariant(moved.ok, 'Pieces that are free can go.');
  return ok(await writeSlip(tx, doer, { give, lines: lines.value, transfer: moved.value }));
}

async function refusalToGive(
  tx: Tx,
  { collectorId, chosen, dueOn }: ToGive,
  todayOn: Day,
): Promise<ApprovalRefusal | null> {
  if ((await livingId(tx, collectorId)) === null) return { code: 'unknown_collector' };
  if (chosen.length === 0) return { code: 'nothing_chosen' };
  const due = checkDueOn(dueOn, todayOn);
  return due.ok ? null : due.refusal;
}

type Line = { skuId: string; quantity: number; editionNumber: number | null };

async function freeLines(
  tx: Tx,
  doer: Doer,
  { chosen, placeId }: { chosen: readonly Chosen[]; placeId: string },
): Promise<Result<Line[], ApprovalRefusal>> {
  const lines: Line[] = [];
  for (const { code, quantity, editionNumber } of chosen) {
    const sku = await tx.sku.findUnique({ where: { code }, select: { id: true } });
    const shelf = sku && (await readShelfToHold(tx, { skuId: sku.id, placeId }));
    if (!sku || !shelf) return refuse({ code: 'unknown_piece_chosen', sku: code });
    const free = decideHold({ quantity, editionNumber, untilAt: null }, shelf, doer.at);
    if (!free.ok) return refuse({ code: 'not_free', hold: free.refusal });
    lines.push({ skuId: sku.id, quantity, editionNumber });
  }
  return ok(lines);
}

const placeName = 'At a collector’s, on approval';

/** The one place of what is being tried at home; made when it is needed first. */
async function approvalPlace(tx: Tx): Promise<string> {
  const place = await tx.place.upsert({
    where: { name: placeName },
    create: { name: placeName, kind: 'on_approval' },
    update: {},
    select: { id: true },
  });
  return place.id;
}

type ToWrite = {
  give: ToGive;
  lines: readonly Line[];
  transfer: { transferId: string };
};

async function writeSlip(tx: Tx, doer: Doer, toWrite: ToWrite): Promise<Given> {
  const { give, lines, transfer } = toWrite;
  const { dueOn, valueCents, condition, security, pictures } = give;
  const collectorId = (await livingId(tx, give.collectorId)) ?? give.collectorId;
  const approvalId = newId();
  const { number } = await tx.onApproval.create({
    data: {
      ...{ id: approvalId, collectorId, transferId: transfer.transferId, valueCents },
      ...{ condition, security, dueOn: dateFromDay(dueOn), staffId: doer.actor.id, at: doer.at },
    },
    select: { number: true },
  });
  await tx.onApprovalLine.createMany({
    data: lines.map((line, at) => ({ approvalId, position: at + 1, ...line })),
  });
  await keepPictures(tx, pictures, { approvalId, isBack: false, at: doer.at });
  await recordAudit(tx, doer, {
    ...{ did: 'gave a piece on approval', subject: 'OnApproval', subjectId: approvalId },
    facts: { number, valueCents, dueOn },
  });
  return { approvalId, number };
}
