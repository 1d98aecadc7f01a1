import type { Day } from '@/lib/dates/rules';

/** The hash that something was kept under, and whether it still fits what is kept. */
export type Mark = { readonly sha256: string; readonly fits: boolean };

/** A picture by its file; its size in pixels. */
export type EvidencePicture = {
  readonly fileId: string;
  readonly alt: string;
  readonly width: number;
  readonly height: number;
};

/** One thing that can be proved: the day it was, in words, with its pictures and its mark. */
export type Entry = {
  readonly on: Day | null;
  readonly title: string;
  readonly lines: readonly string[];
  readonly pictures: readonly EvidencePicture[];
  /** The file of a drawn signature. */
  readonly drawing: string | null;
  readonly mark: Mark | null;
};

/** A part of the evidence; it stands there even when nothing is in it. */
export type Chapter = { readonly title: string; readonly entries: readonly Entry[] };

/** An entry of words alone, filled up with what it does not have. */
export function anEntry(entry: Partial<Entry> & Pick<Entry, 'title'>): Entry {
  return { on: null, lines: [], pictures: [], drawing: null, mark: null, ...entry };
}

/**
 * How many marks there are, and which do not fit any more.
 *
 * @example two marks, one of them of other bytes // { all: 2, broken: ['Sketch A'] }
 */
export function marksOf(chapters: readonly Chapter[]): { all: number; broken: string[] } {
  const marked = chapters.flatMap(({ entries }) => entries).filter(({ mark }) => mark !== null);
  return {
    all: marked.length,
    broken: marked.filter(({ mark }) => mark?.fits === false).map(({ title }) => title),
  };
}

/** What the marks come to, in one sentence. */
export function marksSentence({ all, broken }: { all: number; broken: readonly string[] }): string {
  if (all === 0) return 'Nothing in it was approved or signed yet.';
  if (broken.length === 0) {
    return `All ${all} marks were computed anew and fit: nothing was changed since it was kept.`;
  }
  return `${broken.length} of ${all} marks do not fit what is kept: ${broken.join(', ')}. Keep this file, and ask who looks after the database.`;
}
