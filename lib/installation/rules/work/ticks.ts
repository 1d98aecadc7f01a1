import { type WorkItemKey } from './items';

/** Words that stand for something that is not there, or that somebody decided. */
export const saidKeys = ['no_scale', 'no_fixings_picture', 'plan_word', 'owner_word'] as const;

/** One of the {@link saidKeys}: why there is no weight or picture, what of the plan, and the owner's word. */
export type SaidKey = (typeof saidKeys)[number];

/** What a tick is about: an item of the day, something said, or a note. */
export type TickKey = WorkItemKey | SaidKey | 'note';

/** Something that was ticked, unticked or said. */
export type Tick = {
  readonly id: string;
  readonly item: string;
  readonly isDone: boolean;
  readonly words: string;
  /** By the clock of the device. */
  readonly tickedAt: Date;
  /** Null while it is kept on the device alone. */
  readonly receivedAt: Date | null;
};

/**
 * The instant at which a tick counts: that of the device, but not later than it was received, and
 * not earlier than the day was booked. Clocks of devices go wrong.
 *
 * @example a device that is a year ahead ticked at the moment its tick came in
 */
export function tickedWithin(tickedAt: Date, bounds: { bookedAt: Date; receivedAt: Date }): Date {
  const { bookedAt, receivedAt } = bounds;
  if (tickedAt > receivedAt) return receivedAt;
  return tickedAt < bookedAt ? bookedAt : tickedAt;
}

/**
 * How every item stands: its latest tick by the device's clock. Of two at one instant the one that
 * came in later holds, and what is still on the device before it came in; then the greater key.
 *
 * Notes are not items: each of them stays.
 */
export function heldTicks<One extends Tick>(ticks: readonly One[]): ReadonlyMap<string, One> {
  const held = new Map<string, One>();
  for (const tick of ticks) {
    if (tick.item === 'note') continue;
    const before = held.get(tick.item);
    if (!before || isLater(tick, before)) held.set(tick.item, tick);
  }
  return held;
}

function isLater(tick: Tick, before: Tick): boolean {
  const ticked = tick.tickedAt.getTime() - before.tickedAt.getTime();
  if (ticked !== 0) return ticked > 0;
  const received = receivedMs(tick) - receivedMs(before);
  return received === 0 || Number.isNaN(received) ? tick.id > before.id : received > 0;
}

function receivedMs({ receivedAt }: Tick): number {
  return receivedAt?.getTime() ?? Number.POSITIVE_INFINITY;
}

/** Whether an item is ticked. */
export function isTicked(held: ReadonlyMap<string, Tick>, item: string): boolean {
  return held.get(item)?.isDone ?? false;
}

/** What was said about something; null when nothing was, or it was taken back. */
export function wordsSaid(held: ReadonlyMap<string, Tick>, item: SaidKey): string | null {
  const tick = held.get(item);
  return tick?.isDone && tick.words.trim() !== '' ? tick.words.trim() : null;
}
