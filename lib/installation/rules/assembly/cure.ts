import { commissionRefusalMessage, type CommissionNo } from '@/lib/commissions/rules/refusals';
import { formatInstant, instantOf, type Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** The shortest and the longest that an adhesive is given to cure, in hours: one, and ninety days. */
export const cureHours = { least: 1, most: 90 * 24 } as const;

const hourMs = 3_600_000;

/** When pieces were set, as it was typed: the last of them, in the gallery's own time. */
export type SetTyped = {
  readonly on: Day;
  /** `'HH:mm'` */
  readonly at: string;
  /** How long the maker's paper gives it, in hours. */
  readonly cureHours: number;
};

/** When pieces were set, and until when nothing may stand or hang. */
export type Curing = { readonly finishedAt: Date; readonly curesAt: Date };

/** Why it was not written down that pieces were set. */
export type AssemblyRefusal =
  { code: 'set_to_come' } | { code: 'set_before_the_last'; lastAt: Date; zone: string };

/**
 * Works out until when an adhesive cures.
 *
 * Hours are hours that pass: a night in which the clocks are set changes nothing.
 *
 * @param last when the pieces were set the last time before, if ever: the newest holds, so that a
 *   re-set counts anew and nothing older takes its place
 * @returns refuses, in this order: still to come, before the last setting that was noted
 */
export function decideCuring(
  typed: SetTyped,
  { zone, now, last }: { zone: string; now: Date; last: Date | null },
): Result<Curing, AssemblyRefusal> {
  const finishedAt = instantOf(typed.on, typed.at, zone);
  if (finishedAt > now) return refuse({ code: 'set_to_come' });
  if (last && finishedAt < last) return refuse({ code: 'set_before_the_last', lastAt: last, zone });
  return ok({ finishedAt, curesAt: new Date(finishedAt.getTime() + typed.cureHours * hourMs) });
}

/** Says why it was not written down that pieces were set. */
export function assemblyRefusalMessage(refusal: AssemblyRefusal | CommissionNo): string {
  if (refusal.code === 'set_to_come') {
    return 'That hour is still to come. Write down when the last piece was set.';
  }
  if (refusal.code === 'set_before_the_last') {
    return (
      `Pieces were noted as set at ${formatInstant(refusal.lastAt, refusal.zone)}, and the newest ` +
      'holds. To put that note right, write it again with that very hour.'
    );
  }
  return commissionRefusalMessage(refusal);
}

/** Whether it still cures at an instant; at the very end it has cured. */
export function isCuring(curing: Pick<Curing, 'curesAt'>, at: Date): boolean {
  return at < curing.curesAt;
}

/** Until when it cures, or since when it has: `Cures until 9 May 2026, 3:00 pm`. */
export function cureWords(curing: Pick<Curing, 'curesAt'>, at: Date, zone: string): string {
  const until = formatInstant(curing.curesAt, zone);
  return isCuring(curing, at) ? `Cures until ${until}` : `Has cured since ${until}`;
}

/** What is minded whenever pieces are set, whatever the adhesive. */
export const settingCautions = [
  'Gloves on, doors open, no open flame: many adhesives give off what burns the skin or catches fire. Read the maker’s paper first.',
  'Nothing is stood upright, carried or hung before it has cured.',
  'No plywood and no mastic outdoors: wet and frost let go of both.',
] as const;

const coldC = 10;
const coolC = 18;

/**
 * What a cold room does to an adhesive; null where it is warm enough, or not known.
 *
 * @param roomC °C
 * @source common practice: below 10 °C many adhesives do not cure, below 18 °C they take longer;
 *   the maker's paper goes before both
 */
export function coldCaution(roomC: number | null): string | null {
  if (roomC === null || roomC >= coolC) return null;
  return roomC < coldC
    ? 'Below 10 °C (50 °F) many adhesives do not cure at all, however long they are left. Warm the room, and count from then.'
    : 'In a room below 18 °C (64 °F) it takes longer than the paper says for a warm one. Give it the time for this temperature.';
}
