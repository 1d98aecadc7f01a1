import 'server-only';
import { cache } from 'react';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { readStudioLoad } from './load';

/** The load of a day as a page needs it: read once for all that a page tells from it. */
export const loadForPage = cache((todayOn: Day) => readStudioLoad(db(), todayOn));
