import { formatDay, parseDay } from '@/lib/dates/rules';
import type { DayShown } from './day-shown';
import type { Kept } from './kept/store';

/** What is to be put right, by whom and when: what the gallery knows, and what is only kept here. */
export function snagSentences(
  { snags, staff }: Pick<DayShown, 'snags' | 'staff'>,
  kept: readonly Kept[],
): string[] {
  const known = snags.map((snag) => sentenceOf(snag));
  const here = kept.flatMap(({ entry, standing }) => {
    if (entry.did !== 'snag' || standing === 'refused') return [];
    const mendBy = staff.find(({ id }) => id === entry.mendById)?.name ?? 'the gallery';
    return [sentenceOf({ words: entry.words, mendBy, mendByOn: entry.mendByOn })];
  });
  return [...new Set([...known, ...here])];
}

function sentenceOf(snag: { words: string; mendBy: string; mendByOn: string }): string {
  const { words, mendBy, mendByOn } = snag;
  const day = parseDay(mendByOn);
  const on = day.ok ? formatDay(day.value, 'long') : mendByOn;
  return `${words.trim().replace(/[.;]+$/, '')}: ${mendBy} puts it right by ${on}`;
}
