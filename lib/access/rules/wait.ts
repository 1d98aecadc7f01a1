/** One try at the door. */
export type SignInTry = Readonly<{ at: Date; succeeded: boolean }>;

/** How many wrong tries in a row are free before the waiting begins. */
export const freeTries = { byName: 5, byAddress: 20 } as const;

const firstWaitMs = 30_000;
const waitMostMs = 15 * 60_000;
/** So long without a try, and the row of wrong tries is forgotten. */
const quietMs = 15 * 60_000;
/** Tries before this long ago cannot matter any more, in milliseconds. */
export const tryMemoryMs = 6 * 60 * 60_000;

/**
 * Until when nobody may try again: 30 seconds once the free tries are used up, twice as long after
 * each further wrong try, and never longer than 15 minutes at a time.
 *
 * A right try ends the row, and so do 15 minutes in which one could have tried and did not.
 *
 * @param tries in time order, the oldest first
 * @param free  how many wrong tries in a row are free, see {@link freeTries}
 * @returns null when the next try is free
 * @source common practice: a wait that doubles makes guessing slow and a slip of the finger cheap
 * @example five wrong tries, the last at 10:00:00 // 10:00:30; a sixth at 10:00:30 // 10:01:30
 */
export function waitUntil(tries: readonly SignInTry[], free: number): Date | null {
  let wrong = 0;
  let freeAgainMs = 0;
  for (const { at, succeeded } of tries) {
    const atMs = at.getTime();
    if (succeeded || atMs - freeAgainMs > quietMs) wrong = 0;
    if (!succeeded) wrong += 1;
    freeAgainMs = atMs + waitMs(wrong, free);
  }
  const last = tries.at(-1)?.at.getTime() ?? 0;
  return freeAgainMs > last ? new Date(freeAgainMs) : null;
}

function waitMs(wrong: number, free: number): number {
  return wrong < free ? 0 : Math.min(waitMostMs, firstWaitMs * 2 ** (wrong - free));
}

/** Why somebody was not let in. */
export type SignInRefusal =
  { code: 'wait_a_little'; waitMs: number } | { code: 'name_and_password_differ' };

/**
 * Says in a full sentence why somebody was not let in. Never tells whether the name is known.
 */
export function signInRefusalMessage(refusal: SignInRefusal): string {
  if (refusal.code === 'wait_a_little') {
    return `There were several wrong tries. Wait ${durationWords(refusal.waitMs)}, then try once more.`;
  }
  return 'This name and this password do not belong together. Look at both once more.';
}

function durationWords(ms: number): string {
  const seconds = Math.max(1, Math.ceil(ms / 1000));
  if (seconds <= 60) return seconds === 1 ? 'a second' : `${seconds} seconds`;
  const minutes = Math.ceil(seconds / 60);
  return `${minutes} minutes`;
}
