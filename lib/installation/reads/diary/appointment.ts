import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { loadHangsOn } from '@/lib/installation/reads/diary/booking';
import { diaryColumns, readInDiary, type InDiary } from '@/lib/installation/reads/diary/listed';
import type { HangsOn } from '@/lib/installation/rules/diary/booking';
import type { Span } from '@/lib/installation/rules/diary/kinds';
import type { Word } from '@/lib/installation/rules/diary/questions';
import { db } from '@/lib/platform/db/client';

/** How an appointment stood before it was changed, and who changed it. */
export type StoodBefore = Span & {
  sequence: number;
  leadName: string;
  /** Everyone who would have gone, by name. */
  names: string[];
  why: string;
  /** Null where the collector did it. */
  by: string | null;
  at: Date;
};

/** What somebody decided when it was booked or moved. */
export type WordTold = Word & { sequence: number; by: string; at: Date };

/** An appointment with who booked it when, what was decided, and how it stood before. */
export type AppointmentTold = InDiary & {
  meets: string;
  prepares: string;
  fallBack: string;
  bookedAt: Date;
  bookedBy: string;
  calledOffAt: Date | null;
  collectorPhone: string | null;
  words: WordTold[];
  changes: StoodBefore[];
  /** What a hanging stands on; null for anything without a commission. */
  hangsOn: HangsOn | null;
};

/** One appointment; null when there is none. */
export async function findAppointment(
  actor: Actor,
  id: string,
  zone: string,
): Promise<AppointmentTold | null> {
  assertAllowed(actor, 'diary.see');
  const row = await db().appointment.findUnique({
    where: { id },
    select: {
      ...diaryColumns,
      ...{ bookedAt: true, bookedById: true, calledOffAt: true },
      ...{ meets: true, prepares: true, fallBack: true },
      words: { orderBy: [{ at: 'asc' }, { id: 'asc' }] },
      changes: { orderBy: { sequence: 'desc' } },
    },
  });
  if (!row) return null;
  const { bookedById, bookedAt, calledOffAt, words, changes, ...inDiary } = row;
  const { meets, prepares, fallBack, ...appointment } = inDiary;
  const nameOf = await readNames();
  return {
    ...readInDiary(appointment, zone),
    ...{ meets, prepares, fallBack, bookedAt, calledOffAt },
    bookedBy: nameOf(bookedById),
    collectorPhone: row.commission?.collector.phone ?? null,
    words: words.map(({ about, why, sequence, staffId, at }) => ({
      ...{ about, why, sequence, at },
      by: nameOf(staffId),
    })),
    changes: changes.map(({ leadId, crewIds, staffId, ...change }) => ({
      ...change,
      leadName: nameOf(leadId),
      names: crewIds.map(nameOf).toSorted((one, other) => one.localeCompare(other)),
      by: staffId && nameOf(staffId),
    })),
    hangsOn: row.commission && (await loadHangsOn(db(), row.commission.id)),
  };
}

async function readNames(): Promise<(id: string) => string> {
  const rows = await db().staff.findMany({ select: { id: true, name: true } });
  const names = new Map(rows.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? 'somebody';
}
