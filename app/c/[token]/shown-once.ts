import 'server-only';
import { cache } from 'react';
import { shownForCollector } from '@/lib/commissions/reads/colours/for-collector';

/** What was shown to a collector; the parts of their page ask for it together, it is read once. */
export const shownOnce = cache(shownForCollector);
