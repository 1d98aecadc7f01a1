import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { addPieceStep } from '@/lib/catalogue/writes/pieces';
import { collectorFields } from '@/lib/collectors/input';
import { livingId } from '@/lib/collectors/reads/group';
import { addCollector } from '@/lib/collectors/writes';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { openJob } from '@/lib/studio/writes';
import type { TakeOrderInput } from '../input';
import { readBefore, readPieceToOrder, type PieceToOrder } from '../reads/before';
import { usualDepositCents } from '../rules';
import { piecesToBegin } from '../rules/before';
import { orderSkuCode } from '../rules/order-sku';
import type { OrderRefusal } from '../rules/refusals';

/** An order that was taken; the deposit that is to be paid down, in cents as text. */
export type TakenOrder = { orderId: string; number: number; deposit: string; collectorId: string };

type Taking = Omit<TakeOrderInput, 'requestKey'>;

/**
 * Takes a special order: an existing design in another colour, size or number. A colour or size
 * that was never made gets its SKU; the studio gets its job, spare pieces included, to the day.
 *
 * @returns refuses, in this order: not allowed, an unknown piece, a second, a one-off or an edition,
 *   nobody named, an unknown collector, nowhere to send it, a day that is over, a colour or size
 *   without a price, a deposit above the price
 */
export async function takeOrder(
  doer: Doer,
  { requestKey, ...input }: TakeOrderInput,
): Promise<Result<TakenOrder, OrderRefusal>> {
  const allowed = allow(doer.actor, 'orders.take');
  if (!allowed.ok) return allowed;
  const command = { key: requestKey, name: 'takeOrder', staffId: doer.actor.id, at: doer.at };
  return onceOnly<TakenOrder, OrderRefusal>({ ...command, input }, (tx) =>
    takeOrderStep(tx, doer, input),
  );
}

/** The step of {@link takeOrder}: joins the caller's transaction, asks nobody for leave. */
export async function takeOrderStep(
  tx: Tx,
  doer: Doer,
  input: Taking,
): Promise<Result<TakenOrder, OrderRefusal>> {
  const { timeZone } = await getGallery(tx);
  const todayOn = dayOf(doer.at, timeZone);
  const base = await readPieceToOrder(tx, { id: input.skuId });
  if (!base) return refuse({ code: 'unknown_piece' });
  const refusal = refusalToTake(base, input, todayOn);
  if (refusal) return refuse(refusal);
  const collectorId = await findCollector(tx, doer, input);
  if (!collectorId.ok) return collectorId;
  const made = await skuOf(tx, doer, { base, input, todayOn });
  if (!made.ok) return made;
  const { skuId, unitPriceCents } = made.value;
  const totalCents = unitPriceCents * BigInt(input.quantity);
  const depositCents = input.depositCents ?? usualDepositCents(unitPriceCents, input.quantity);
  if (depositCents > totalCents) return refuse({ code: 'deposit_above_price', totalCents });
  const terms = { skuId, unitPriceCents, depositCents, collectorId: collectorId.value };
  return write(tx, doer, { base, input, todayOn, terms });
}

function refusalToTake(base: PieceToOrder, input: Taking, todayOn: Day): OrderRefusal | null {
  if (base.grade !== 'first') return { code: 'second_is_not_made' };
  if (base.making !== 'open_stock') return { code: 'made_once' };
  if (input.collectorId === null && input.newName === '') return { code: 'nobody_named' };
  if (input.goes === 'sent' && input.sendTo === '') return { code: 'nowhere_to_send' };
  return input.readyAboutOn < todayOn ? { code: 'day_is_over', todayOn } : null;
}

async function findCollector(
  tx: Tx,
  doer: Doer,
  { collectorId, newName, newPhone, newEmail }: Taking,
): Promise<Result<string, OrderRefusal>> {
  if (collectorId === null) {
    const fields = { name: newName, phone: newPhone, email: newEmail };
    const read = collectorFields.safeParse(fields);
    return read.success
      ? ok(await addCollector(tx, doer, read.data))
      : refuse({ code: 'nobody_named' });
  }
  const known = await livingId(tx, collectorId);
  return known ? ok(known) : refuse({ code: 'unknown_collector' });
}

type Asked = { base: PieceToOrder; input: Taking; todayOn: Day };

/** The SKU of what is ordered, found or made, and what one of it costs. */
async function skuOf(
  tx: Tx,
  doer: Doer,
  { base, input, todayOn }: Asked,
): Promise<Result<{ skuId: string; unitPriceCents: Cents }, OrderRefusal>> {
  const size = sizeOf(base, input.size);
  const colourwayId = input.colourwayId ?? base.colourwayId;
  const { designId, kind } = base;
  const same = await tx.sku.findFirst({
    where: { designId, kind, colourwayId, ...size, grade: 'first', making: 'open_stock' },
    select: { id: true },
    orderBy: { code: 'asc' },
  });
  if (same) {
    const [{ cents }] = await tx.$queryRaw<[{ cents: bigint }]>`
      SELECT price_on(${same.id}::uuid, ${todayOn}::date) AS cents`;
    return ok({ skuId: same.id, unitPriceCents: input.unitPriceCents ?? cents });
  }
  const unitPriceCents = input.unitPriceCents;
  if (unitPriceCents === null) return refuse({ code: 'price_needed' });
  const colourway = await tx.colourway.findUnique({
    where: { id: colourwayId },
    select: { name: true },
  });
  if (!colourway) return refuse({ code: 'unknown_piece' });
  const made = await addSku(tx, doer, { base, size, colourway: colourway.name, unitPriceCents });
  return made.ok ? ok({ skuId: made.value, unitPriceCents }) : made;
}

type Size = { widthUm: number; heightUm: number };

function sizeOf(base: PieceToOrder, size: string | null): Size {
  const [widthUm = base.widthUm, heightUm = base.heightUm] = size?.split('x').map(Number) ?? [];
  return { widthUm, heightUm };
}

async function addSku(
  tx: Tx,
  doer: Doer,
  made: { base: PieceToOrder; size: Size; colourway: string; unitPriceCents: Cents },
): Promise<Result<string, OrderRefusal>> {
  const { base, size, colourway, unitPriceCents } = made;
  const sameSize = size.widthUm === base.widthUm && size.heightUm === base.heightUm;
  const alike = await tx.sku.findMany({
    where: { code: { startsWith: base.code.slice(0, 4) } },
    select: { code: true },
    orderBy: { code: 'asc' },
    take: 5_000,
  });
  const code = orderSkuCode(base.code, colourway, new Set(alike.map((each) => each.code)));
  const added = await addPieceStep(tx, doer, {
    ...{ code, title: base.title, kind: base.kind, colourway, ...size, gtin: null },
    ...{ depthUm: sameSize ? base.depthUm : null, weightG: sameSize ? base.weightG : null },
    ...{ priceCents: unitPriceCents, costCents: sameSize ? base.costCents : null },
    making: 'open_stock',
  });
  return added.ok ? ok(added.value.skuId) : refuse({ code: 'piece', why: added.refusal });
}

type Terms = { skuId: string; unitPriceCents: Cents; depositCents: Cents; collectorId: string };

async function write(
  tx: Tx,
  doer: Doer,
  { base, input, todayOn, terms }: Asked & { terms: Terms },
): Promise<Result<TakenOrder, OrderRefusal>> {
  const { quantity, technique, readyAboutOn, wish, goes, sendTo } = input;
  const colourwayId = input.colourwayId ?? base.colourwayId;
  const wanted = { designId: base.designId, kind: base.kind, colourwayId, quantity, technique };
  const before = await readBefore(tx, { ...wanted, wantedOn: readyAboutOn }, todayOn);
  if (!before) return refuse({ code: 'unknown_piece' });
  const job = await openJob(tx, doer, {
    ...{ title: `${base.title}, special order`.slice(0, 120), technique },
    ...{ pieces: piecesToBegin(quantity), wanted: quantity },
    ...{ skuId: terms.skuId, neededOn: readyAboutOn },
  });
  invariant(job.ok, 'The piece of an order is in the stock list.');
  const orderId = newId();
  const { number } = await tx.specialOrder.create({
    data: {
      ...{ id: orderId, ...terms, quantity, wish, isSent: goes === 'sent', jobId: job.value.id },
      sendTo: goes === 'sent' ? sendTo : '',
      readyAboutOn: dateFromDay(readyAboutOn),
      askedOn: dateFromDay(todayOn),
      saidBefore: before.said.map((each) => each.words).join(' '),
      ...{ staffId: doer.actor.id, at: doer.at },
    },
    select: { number: true },
  });
  const { depositCents, collectorId } = terms;
  const facts = { number, title: base.title, quantity, depositCents, readyAboutOn };
  const did = 'took a special order';
  await recordAudit(tx, doer, { did, subject: 'SpecialOrder', subjectId: orderId, facts });
  return ok({ orderId, number, deposit: depositCents.toString(), collectorId });
}
