import type { Spending } from '@/lib/studio/rules/costs/cost';

/** What is spent on a piece, as a line of its cost reads. */
export const spendingWords: Readonly<Record<Spending | 'losses' | 'overhead', string>> = {
  clay: 'Clay',
  glaze: 'Glaze',
  hands: 'Hands',
  firing: 'Firings',
  mould: 'Mould',
  losses: 'For those that are lost',
  overhead: 'Overhead',
};

/** Hundredths of a minute as hours and minutes: `35 min`, `2 h 10 min`. */
export function handsWords(minuteHundredths: number): string {
  const minutes = Math.round(minuteHundredths / 100);
  const [hours, over] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${over} min`;
  return over === 0 ? `${hours} h` : `${hours} h ${over} min`;
}
