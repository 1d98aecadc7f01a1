import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dayOf } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { moveStock } from '@/lib/stock/writes';
import type { BackInput } from '../input/approval';
import { readApprovals, type ApprovalShown } from '../reads/approval-slips';
import { untilByDefault } from '../rules';
import {
  decideBack,
  type AnyApprovalRefusal,
  type ApprovalRefusal,
  type ComesBack,
  type LineOut,
} from '../rules/approval';
import { holdPieces } from '../writes';
import { carryOut } from './carry-out';
import { readyPictures, type ReadyPicture } from '@/lib/files/ready';
import { keepPictures } from './pictures';

/** A piece that was bought after it was tried: here again, and held for who bought it. */
export type BoughtLine = { skuId: string; quantity: number; numbers: number[]; holdIds: string[] };

/** What came back of a slip; `bought` is ready to be put on the counter's slip. */
export type CameBack = { number: number; collectorId: string; bought: BoughtLine[] };

/**
 * Takes pieces back that were tried at home, all or some. What is bought comes back to the
 * counter's place too, held for its collector, so that it can be sold over the counter.
 *
 * @returns refuses, in this order: a picture that cannot be kept, not allowed, a key used for
 *   something else, and then what {@link backStep} refuses
 */
export async function takeBackFromApproval(
  doer: Doer,
  input: BackInput,
): Promise<Result<CameBack, AnyApprovalRefusal>> {
  const pictures = await readyPictures(input.pictures);
  if (!pictures.ok) return pictures;
  const { requestKey, approvalId, comes, what, condition } = input;
  const hashes = pictures.value.map((picture) => picture.sha256);
  const said = { requestKey, approvalId, comes, what, condition, hashes };
  const command = { name: 'takeBackFromApproval', input: said };
  return carryOut<CameBack, ApprovalRefusal>(doer, command, (tx) =>
    backStep(tx, doer, {
      ...{ approvalId, comes, condition, isBought: what === 'bought' },
      pictures: pictures.value,
    }),
  );
}

/** What comes back of which slip, how it is, and whether it was bought. */
export type ToTakeBack = {
  approvalId: string;
  comes: ComesBack;
  condition: string;
  isBought: boolean;
  pictures: readonly ReadyPicture[];
};

/**
 * The step of {@link takeBackFromApproval}: joins the caller's transaction, asks nobody for leave.
 *
 * @returns refuses, in this order: an unknown slip, one of which nothing is out, and what
 *   {@link decideBack} refuses
 */
export async function backStep(
  tx: Tx,
  doer: Doer,
  asked: ToTakeBack,
): Promise<Result<CameBack, ApprovalRefusal>> {
  const where = { id: asked.approvalId };
  const [approval] = await readApprovals(tx, { where, newestFirst: false, most: 1 });
  if (!approval) return refuse({ code: 'unknown_approval' });
  if (approval.endedAt) return refuse({ code: 'all_came_back', endedAt: approval.endedAt });
  const decided = decideBack(approval.lines, asked.comes);
  if (!decided.ok) return decided;

  const gallery = await getGallery(tx);
  const coming = decided.value;
  await moveBack(tx, doer, { approval, coming, asked, gallery });
  const cameInAll = coming.reduce((sum, each) => sum + each.quantity, 0);
  const outInAll = approval.lines.reduce((sum, line) => sum + line.out, 0);
  const data = { endedAt: cameInAll === outInAll ? doer.at : null };
  await tx.onApproval.update({ where, data, select: { id: true } });
  const bought = asked.isBought
    ? await holdForBuyer(tx, doer, { approval, coming, asked, gallery })
    : ok([]);
  if (!bought.ok) return bought;
  const { number, collector } = approval;
  const facts = { number, pieces: cameInAll, bought: asked.isBought };
  const did = 'took back what was on approval';
  await recordAudit(tx, doer, { did, subject: 'OnApproval', subjectId: approval.id, facts });
  return ok({ number, collectorId: collector.id, bought: bought.value });
}

type Coming = {
  approval: ApprovalShown;
  coming: readonly { line: LineOut; quantity: number }[];
  asked: ToTakeBack;
  gallery: Gallery;
};

async function moveBack(
  tx: Tx,
  doer: Doer,
  { approval, coming, asked, gallery }: Coming,
): Promise<void> {
  const moved = await moveStock(tx, doer, {
    ...{ fromId: approval.placeId, toId: gallery.counterId },
    movedOn: dayOf(doer.at, gallery.timeZone),
    note: `Back from approval ${approval.number}`,
    pieces: coming.map(({ line, quantity }) => ({
      ...{ skuId: line.skuId, quantity },
      ...(line.editionNumber === null ? {} : { editionNumber: line.editionNumber }),
    })),
  });
  invariant(moved.ok, 'What is out on approval can come back.');
  const { approvalId, isBought: bought, condition } = asked;
  const { transferId } = moved.value;
  const by = { staffId: doer.actor.id, at: doer.at };
  const data = { transferId, approvalId, bought, condition, ...by };
  await tx.onApprovalBack.create({ data, select: { transferId: true } });
  await keepPictures(tx, asked.pictures, { approvalId, isBack: true, at: doer.at });
}

async function holdForBuyer(
  tx: Tx,
  doer: Doer,
  { approval, coming, gallery }: Coming,
): Promise<Result<BoughtLine[], ApprovalRefusal>> {
  const { id: collectorId, name: forWhom, phone } = approval.collector;
  const bought: BoughtLine[] = [];
  for (const { line, quantity } of coming) {
    const { skuId, editionNumber } = line;
    const held = await holdPieces(tx, doer, {
      ...{ skuId, placeId: gallery.counterId, quantity, editionNumber, collectorId, forWhom },
      ...{ phone: phone ?? '', note: `Tried at home, slip ${approval.number}` },
      untilAt: untilByDefault(doer.at, gallery.holdHours),
    });
    if (!held.ok) return refuse({ code: 'not_free', hold: held.refusal });
    const numbers = editionNumber === null ? [] : [editionNumber];
    bought.push({ skuId, quantity, numbers, holdIds: [held.value.holdId] });
  }
  return ok(bought);
}
