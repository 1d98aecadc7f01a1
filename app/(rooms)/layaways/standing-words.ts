import { formatDay } from '@/lib/dates/rules';
import type { LayawayFacts } from '@/lib/layaway/reads/facts';
import { formatCents } from '@/lib/money/rules';

/** Where a layaway stands, in one sentence. */
export function standingWords(layaway: LayawayFacts): string {
  const { standing, money, endedWhy, handedOverBy, finalOn } = layaway;
  switch (standing) {
    case 'late': {
      const since = money.lateSinceOn ? ` since ${formatDay(money.lateSinceOn, 'short')}` : '';
      return `${formatCents(money.lateCents)} is late${since}.`;
    }
    case 'paid_off':
      return 'Paid off: hand it over.';
    case 'handed_over':
      return `Handed over, receipt ${handedOverBy ?? ''}.`;
    case 'cancelled':
      return `Cancelled: ${endedWhy}`;
    case 'running':
      return `Runs until ${formatDay(finalOn, 'short')}.`;
  }
}
