import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { instantOf } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { HoldInput, HoldLongerInput, HoldTouchInput } from '../input';
import { holdDaysMost } from '../rules';
import type { AnyHoldRefusal, HoldRefusal } from '../rules/refusals';
import { endHold, holdPieces, type HoldMade, type NextInLine } from '../writes';
import { carryOut, nameWhom } from './carry-out';

/**
 * Holds pieces for somebody until a day and an hour.
 *
 * @returns the hold's number; refuses, in this order: not allowed, a key used for something else,
 *   an unknown collector, and then what {@link holdPieces} refuses
 */
export async function holdForSomebody(
  doer: Doer,
  input: HoldInput,
): Promise<Result<HoldMade, AnyHoldRefusal>> {
  return carryOut<HoldMade, HoldRefusal>(doer, { name: 'holdForSomebody', input }, async (tx) => {
    const { skuId, placeId, quantity, editionNumber, untilOn, untilTime, note } = input;
    const { timeZone } = await getGallery(tx);
    const named = await nameWhom(tx, input);
    if (!named.ok) return named;
    const untilAt = instantOf(untilOn, untilTime, timeZone);
    const pieces = { skuId, placeId, quantity, editionNumber };
    return holdPieces(tx, doer, { ...pieces, ...named.value, untilAt, note });
  });
}

/**
 * Notes that somebody was called about the end of their hold.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 */
export async function noteCall(
  doer: Doer,
  input: HoldTouchInput,
): Promise<Result<{ number: number }, AnyHoldRefusal>> {
  return carryOut<{ number: number }, HoldRefusal>(doer, { name: 'noteCall', input }, (tx) =>
    changeHold(tx, doer, { holdId: input.holdId, did: 'called about a hold', calledAt: doer.at }),
  );
}

/**
 * Makes a hold longer, or shorter. Whoever was called about the old hour is called again.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an hour that has
 *   passed, one more than a year away, unknown, ended, one that ends with a layaway or an order
 */
export async function holdLonger(
  doer: Doer,
  input: HoldLongerInput,
): Promise<Result<{ number: number }, AnyHoldRefusal>> {
  return carryOut<{ number: number }, HoldRefusal>(
    doer,
    { name: 'holdLonger', input },
    async (tx) => {
      const { timeZone } = await getGallery(tx);
      const untilAt = instantOf(input.untilOn, input.untilTime, timeZone);
      if (untilAt <= doer.at) return refuse({ code: 'until_has_passed', untilAt });
      if (untilAt.getTime() > doer.at.getTime() + holdDaysMost * 86_400_000) {
        return refuse({ code: 'until_too_far', daysMost: holdDaysMost });
      }
      const { holdId } = input;
      return changeHold(tx, doer, { holdId, did: 'held longer', calledAt: null, untilAt });
    },
  );
}

/** How a hold that was let go leaves things: who is to be called now. */
export type LetGo = { number: number; next: NextInLine | null };

/**
 * Lets a hold go: before its hour as released, after it as lapsed. Its pieces are free at once, and
 * whoever is second in line is named.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended, one
 *   that ends with a layaway or an order
 */
export async function letGo(
  doer: Doer,
  input: HoldTouchInput,
): Promise<Result<LetGo, AnyHoldRefusal>> {
  return carryOut<LetGo, HoldRefusal>(doer, { name: 'letGo', input }, async (tx) => {
    const hold = await findOpenHold(tx, input.holdId);
    if (!hold.ok) return hold;
    const { number, untilAt } = hold.value;
    const how = untilAt <= doer.at ? 'lapsed' : 'released';
    const ended = await endHold(tx, doer, { holdId: input.holdId, how });
    return ended.ok ? ok({ number, next: ended.value.next }) : ended;
  });
}

type HoldChange = { holdId: string; did: string; calledAt: Date | null; untilAt?: Date };

async function changeHold(
  tx: Tx,
  doer: Doer,
  { holdId, did, ...change }: HoldChange,
): Promise<Result<{ number: number }, HoldRefusal>> {
  const hold = await findOpenHold(tx, holdId);
  if (!hold.ok) return hold;
  await tx.hold.update({ where: { id: holdId }, data: change, select: { id: true } });
  const { number } = hold.value;
  const facts = { number, untilAt: (change.untilAt ?? hold.value.untilAt).toISOString() };
  await recordAudit(tx, doer, { did, subject: 'Hold', subjectId: holdId, facts });
  return ok({ number });
}

async function findOpenHold(
  tx: Tx,
  holdId: string,
): Promise<Result<{ number: number; untilAt: Date }, HoldRefusal>> {
  const hold = await tx.hold.findUnique({
    where: { id: holdId },
    select: { number: true, untilAt: true, endedAt: true, endedHow: true, layawayId: true },
  });
  if (!hold) return refuse({ code: 'unknown_hold' });
  if (hold.endedAt !== null && hold.endedHow !== null) {
    return refuse({ code: 'hold_has_ended', how: hold.endedHow, endedAt: hold.endedAt });
  }
  if (hold.untilAt === null) {
    const paper = hold.layawayId === null ? 'order' : 'layaway';
    return refuse({ code: 'ends_with_its_paper', paper });
  }
  return ok({ number: hold.number, untilAt: hold.untilAt });
}
