import type { Permission } from '@/lib/access/rules';

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

/** What a file may hold that is looked at on the page of files. */
export const fileKinds = ['people', 'sales'] as const;
/** What a file holds that is looked at on the page of files. */
export type FileKind = (typeof fileKinds)[number];

/** What may be brought in; a stock list is looked at in the stock room. */
export const loadKinds = [...fileKinds, 'stock'] as const;
/** What is brought in. */
export type LoadKind = (typeof loadKinds)[number];

/** What one must be allowed to do to bring in each kind. */
export const loadNeeds = {
  people: 'data.bring_in',
  sales: 'data.bring_in',
  stock: 'stock.load',
} as const satisfies Record<LoadKind, Permission>;

/** What a file holds, in words. */
export const loadKindWords: Readonly<Record<LoadKind, string>> = {
  people: 'people',
  sales: 'sales of earlier books',
  stock: 'a stock list',
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
