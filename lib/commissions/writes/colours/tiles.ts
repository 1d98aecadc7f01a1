import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { GiveTwinInput, MeasureFiredInput } from '@/lib/commissions/input/colours/showing';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import type { Lab } from '@/lib/colour/rules';
import { nearestShade, type Shade } from '@/lib/colour/rules/words';
import {
  carryOut,
  findForWriting,
  findOpen,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import { dateFromDay } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Which tile it was about. */
export type TileActed = { number: number; commissionNumber: number };

/**
 * Gives the twin of a tile to the collector: from then on they can say yes to the colour.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, handed over, no such tile, a day to come, given already
 */
export async function giveTwin(
  doer: Doer,
  input: GiveTwinInput,
): Promise<Result<TileActed, AnyRefusal>> {
  const { requestKey, ...given } = input;
  const { commissionId, tileId, how, givenOn } = given;
  const command = {
    name: 'giveTwin',
    permission: 'commissions.write',
    key: requestKey,
    input: given,
  } as const;
  return carryOut(doer, command, async (tx) => {
    const found = await findOpen(tx, doer, commissionId);
    if (!found.ok) return found;
    const tile = await tx.colourTile.findFirst({
      where: { id: tileId, commissionId },
      select: { number: true, given: { select: { tileId: true } } },
    });
    if (!tile) return refuse({ code: 'nothing_shown' as const });
    if (givenOn > found.value.today) return refuse({ code: 'day_to_come' as const, on: givenOn });
    if (tile.given) return refuse({ code: 'given_already' as const });
    await tx.colourTileGiven.create({
      data: { tileId, how, givenOn: dateFromDay(givenOn), staffId: doer.actor.id, at: doer.at },
      select: { tileId: true },
    });
    const did = `gave the twin of colour tile ${tile.number}`;
    await tellHistory(tx, doer, { commissionId, did, facts: { name: how, givenOn } });
    return ok({ number: tile.number, commissionNumber: found.value.number });
  });
}

/** A fired part held against its tile: the difference, to three places, and whether it is within. */
export type FiredMeasured = TileActed & { deltaE: string; nearest: Shade; isWithin: boolean };

/** A fired part to be held against a tile. */
export type FiredToHold = Omit<MeasureFiredInput, 'requestKey'>;

/**
 * Holds a fired part against the nearest of the approved tile's range.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, no such tile,
 *   a tile without a yes, a range that was not measured
 * @source CIEDE2000; the limit is the gallery's own
 */
export async function measureFired(
  doer: Doer,
  input: MeasureFiredInput,
): Promise<Result<FiredMeasured, AnyRefusal>> {
  const { requestKey, ...measured } = input;
  const command = {
    name: 'measureFired',
    permission: 'commissions.write',
    key: requestKey,
    input: measured,
  } as const;
  return carryOut(doer, command, (tx) => addFired(tx, doer, measured));
}

/** The step of {@link measureFired}: joins the caller's transaction, asks nobody for leave. */
export async function addFired(
  tx: Tx,
  doer: Doer,
  { commissionId, tileId, where, lab, firing = '' }: FiredToHold,
): Promise<Result<FiredMeasured, CommissionRefusal>> {
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const tile = await tx.colourTile.findFirst({
    where: { id: tileId, commissionId },
    select: {
      number: true,
      approvals: { select: { id: true }, take: 1 },
      shades: { select: { shade: true, lStar: true, aStar: true, bStar: true } },
    },
  });
  if (!tile) return refuse({ code: 'nothing_shown' });
  if (tile.approvals.length === 0) return refuse({ code: 'not_approved_yet' });
  const range = tile.shades.map(({ shade, ...row }) => ({ shade, lab: labOf(row) }));
  const [lStar, aStar, bStar] = lab;
  const nearest = nearestShade(range, [Number(lStar), Number(aStar), Number(bStar)]);
  if (!nearest) return refuse({ code: 'not_measured' });
  const { colourLimit } = await readCommissionTerms(tx);
  const deltaE = (Math.round(nearest.deltaE * 1000) / 1000).toString();
  await tx.firedColour.create({
    data: {
      ...{ commissionId, tileId, where, lStar, aStar, bStar, deltaE, firing },
      ...{ nearest: nearest.shade, limitDeltaE: colourLimit, staffId: doer.actor.id },
      measuredOn: dateFromDay(found.value.today),
      at: doer.at,
    },
    select: { id: true },
  });
  const isWithin = Number(deltaE) <= Number(colourLimit);
  const did = `held ${where} against colour tile ${tile.number}`;
  await tellHistory(tx, doer, { commissionId, did, facts: { deltaE, isWithin } });
  const { number: commissionNumber } = found.value;
  return ok({ number: tile.number, commissionNumber, deltaE, nearest: nearest.shade, isWithin });
}

type Star = { toNumber: () => number } | null;

function labOf({ lStar, aStar, bStar }: { lStar: Star; aStar: Star; bStar: Star }): Lab | null {
  if (!lStar || !aStar || !bStar) return null;
  return [lStar.toNumber(), aStar.toNumber(), bStar.toNumber()];
}
