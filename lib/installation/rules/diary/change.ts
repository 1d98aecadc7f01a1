import { ok, refuse, type Result } from '@/lib/platform/result';

/** Why an appointment was not changed. */
export type ChangeRefusal =
  | { code: 'no_such_appointment' }
  | { code: 'called_off_already' }
  | { code: 'over_already' }
  | { code: 'changed_meanwhile' };

/**
 * Decides whether an appointment may still be changed by somebody who saw it as `seenSequence`.
 *
 * @returns refuses, in this order: no such appointment, called off already, over already,
 *   changed since it was seen
 */
export function decideChange(
  appointment: { sequence: number; endsAt: Date; isCalledOff: boolean } | null,
  seenSequence: number,
  now: Date,
): Result<true, ChangeRefusal> {
  if (!appointment) return refuse({ code: 'no_such_appointment' });
  if (appointment.isCalledOff) return refuse({ code: 'called_off_already' });
  if (appointment.endsAt <= now) return refuse({ code: 'over_already' });
  if (appointment.sequence !== seenSequence) return refuse({ code: 'changed_meanwhile' });
  return ok(true);
}
