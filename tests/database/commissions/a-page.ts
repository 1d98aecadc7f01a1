import { randomUUID } from 'node:crypto';
import { offerDays } from '@/lib/installation/writes/offers/days';
import type { Day } from '@/lib/dates/rules';
import type { OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql } from '@/tests/helpers/database';
import { done, on } from './a-commission';

/** What became of something: done, or why not. */
export function code(result: { ok: true } | { ok: false; refusal: { code: string } }): string {
  return result.ok ? 'done' : result.refusal.code;
}

let week = 0;

/** Two days that the maker leads, of a week that nobody else was offered, or of the last one. */
export async function offered(
  gallery: OpenGallery,
  commissionId: string,
  { sameWeek = false, crewIds = [] }: { sameWeek?: boolean; crewIds?: string[] } = {},
) {
  if (!sameWeek) week += 1;
  const [first, second] = [dayOfJune(1 + week * 7), dayOfJune(2 + week * 7)];
  const { offerId } = done(
    await offerDays(on(gallery.maker, '2026-05-12'), {
      ...{ requestKey: randomUUID(), commissionId, leadId: gallery.maker.id },
      ...{ kind: 'hanging' as const, minutes: 180, address: 'The Fernhollow library', note: '' },
      days: [first, second].map((day) => ({ day, from: '09:00' })),
      ...{ crewIds, travelMinutes: 0, words: { before_ready: 'It was made elsewhere.' } },
    }),
  );
  return { offerId, first, second };
}

function dayOfJune(date: number): Day {
  return new Date(Date.UTC(2026, 5, date)).toISOString().slice(0, 10) as Day;
}

/** A choice as the form sends it. */
export function choice(commissionId: string, offerId: string, position: number) {
  return { requestKey: randomUUID(), commissionId, offerId, position };
}

/** Waits until a session of this database waits for a lock of another. */
export async function untilSomeoneWaits(): Promise<void> {
  for (let tries = 0; tries < 400; tries += 1) {
    const waits = await sql(
      `select 1 from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'`,
    );
    if (waits.length > 0) return;
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  throw new Error('Nobody waited.');
}
