import { randomUUID } from 'node:crypto';
import { firstRunInput } from '@/lib/access/input/set-up';
import type { Actor, Doer, Role } from '@/lib/access/rules';
import { addStaff } from '@/lib/access/writes';
import { finishFirstRun } from '@/lib/access/writes/set-up';
import { openSession } from '@/lib/access/reads';
import type { Result } from '@/lib/platform/result';

/** The instant at which these stories begin. */
export const beginning = new Date('2026-11-25T18:00:00Z');

/** So many seconds after the beginning. */
export function later(seconds: number): Date {
  return new Date(beginning.getTime() + seconds * 1000);
}

/** A password that is taken, and that everybody in these stories has. */
export const password = 'tern over shoals';

/** The form of the first run as it is sent. */
export function aFirstRun(fields: Record<string, string> = {}) {
  return firstRunInput.parse({
    galleryName: 'Saltwood Relief',
    timeZone: 'America/Los_Angeles',
    state: 'Alderland',
    authority1: 'State of Alderland',
    rate1: '5.5',
    ownerName: 'Maren Tidewell',
    signInName: 'maren',
    password,
    ...fields,
  });
}

/** The value of what must not be refused here. */
export function done<Value>(result: Result<Value, { code: string }>): Value {
  if (!result.ok) throw new Error(`This was not to be refused: ${result.refusal.code}`);
  return result.value;
}

/** Opens a gallery by its first run. */
export async function openGallery(): Promise<{ owner: Actor; sessionId: string }> {
  const from = { at: beginning, device: 'Firefox on Linux' };
  const { sessionId } = done(await finishFirstRun(aFirstRun(), from));
  const signedIn = await openSession(sessionId, beginning);
  if (!signedIn) throw new Error('The owner is let in by the first run.');
  return { owner: signedIn.actor, sessionId };
}

/** The form of someone new as it is sent. */
export function aPerson(signInName: string, roles: Role[]) {
  const name = `${signInName.slice(0, 1).toUpperCase()}${signInName.slice(1)} Fennick`;
  return { requestKey: randomUUID(), name, signInName, roles, password };
}

/** Takes someone on. */
export async function takeOn(owner: Actor, signInName: string, roles: Role[]): Promise<Actor> {
  const person = aPerson(signInName, roles);
  const id = done(await addStaff(by(owner), person));
  return { id, name: person.name, roles };
}

/** Somebody doing something, some seconds after the beginning. */
export function by(actor: Actor, seconds = 0): Doer {
  return { actor, at: later(seconds) };
}
