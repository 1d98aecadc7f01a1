import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { loadSurvey, type SurveyKept } from './kept';

/** A survey with who looked. */
export type SurveyTold = SurveyKept & { readonly by: string };

/** One time that somebody looked. */
export type SurveyLooked = {
  readonly version: number;
  readonly surveyedOn: Day;
  readonly at: Date;
  readonly by: string;
};

/** The latest survey of the wall of a commission; null where nobody has looked. */
export async function findSurvey(actor: Actor, commissionId: string): Promise<SurveyTold | null> {
  assertAllowed(actor, 'commissions.see');
  const survey = await loadSurvey(db(), commissionId);
  if (!survey) return null;
  const [by] = await namesOf([survey.staffId]);
  return { ...survey, by: by ?? 'somebody' };
}

/** Every time that somebody looked at the wall of a commission, the latest first; at most 50. */
export async function listLooked(actor: Actor, commissionId: string): Promise<SurveyLooked[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().wallSurvey.findMany({
    where: { commissionId },
    select: { version: true, surveyedOn: true, at: true, staffId: true },
    orderBy: { version: 'desc' },
    take: 50,
  });
  const names = await namesOf(rows.map(({ staffId }) => staffId));
  return rows.map(({ version, surveyedOn, at }, place) => ({
    ...{ version, at, surveyedOn: dayFromDate(surveyedOn) },
    by: names[place] ?? 'somebody',
  }));
}

/** The names of people, in the order given. */
async function namesOf(ids: readonly string[]): Promise<(string | undefined)[]> {
  const people = await db().staff.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, name: true },
  });
  const names = new Map(people.map(({ id, name }) => [id, name]));
  return ids.map((id) => names.get(id));
}
