/** How many lines of a file would do what. */
export type LoadCounts = {
  newLines: number;
  changedLines: number;
  sameLines: number;
  refusedLines: number;
};

/** What a line of a file would do; a sale of several lines counts each of them. */
export type Verdict = 'new' | 'changed' | 'same' | 'refused';

/** Adds up what the lines of a file would do. */
export function countLines(plan: readonly { verdict: Verdict; lines?: number }[]): LoadCounts {
  const of = (verdict: Verdict) =>
    plan
      .filter((each) => each.verdict === verdict)
      .reduce((sum, each) => sum + (each.lines ?? 1), 0);
  return {
    newLines: of('new'),
    changedLines: of('changed'),
    sameLines: of('same'),
    refusedLines: of('refused'),
  };
}

/**
 * The counts in one sentence.
 *
 * @example loadCountsWords({ newLines: 3, changedLines: 0, sameLines: 1, refusedLines: 0 })
 *   // '3 new, 1 the same.'
 */
export function loadCountsWords(counts: LoadCounts): string {
  const parts = [
    [counts.newLines, 'new'],
    [counts.changedLines, 'changed'],
    [counts.sameLines, 'the same'],
    [counts.refusedLines, 'refused'],
  ] as const;
  const said = parts.filter(([count]) => count > 0);
  if (said.length === 0) return 'Nothing.';
  return `${said.map(([count, word]) => `${count.toLocaleString('en-US')} ${word}`).join(', ')}.`;
}

/** A file is looked at first; what is brought in comes from one of these. */
export const loadKinds = ['people', 'sales'] as const;
/** What a file holds. */
export type LoadKind = (typeof loadKinds)[number];

/** What a file holds, in words. */
export const loadKindWords: Readonly<Record<LoadKind, string>> = {
  people: 'people',
  sales: 'sales of earlier books',
};

/** Where a file that is brought in stands. */
export type LoadStanding = 'going' | 'stopping' | 'kept' | 'not_kept' | 'half_way';

/** After so many milliseconds without a sign of life nobody is at work on it any more. */
export const silentMostMs = 60_000;

/**
 * Where a file that is brought in stands.
 *
 * Whether it was kept is known by the answer that was written with the rows themselves, so that a
 * process which ended in between cannot say anything wrong.
 *
 * @example not ended, not kept, and no sign of life for a minute // 'half_way': nothing was kept
 */
export function standingOf(
  load: { isKept: boolean; endedAt: Date | null; seenAt: Date; stopAskedAt: Date | null },
  now: Date,
): LoadStanding {
  if (load.isKept) return 'kept';
  if (load.endedAt) return 'not_kept';
  if (now.getTime() - load.seenAt.getTime() > silentMostMs) return 'half_way';
  return load.stopAskedAt ? 'stopping' : 'going';
}
