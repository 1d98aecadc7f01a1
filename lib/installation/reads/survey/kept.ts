import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { Obstacle } from '@/lib/walls/rules/plan/wall';

/** The columns of a survey, what is on the wall, and its pictures. */
export const surveySelect = {
  ...{ id: true, version: true, wall: true, provedHow: true, studWood: true, studSpacingUm: true },
  ...{ firstStudUm: true, studWidthUm: true, studDepthUm: true, steelGauge: true, coverUm: true },
  ...{ isPlasterSound: true, hasBacking: true, backing: true, wallWidthUm: true, ceilingUm: true },
  ...{ outOfPlumbUm: true, furnitureUm: true, servicesSought: true, services: true },
  ...{ isOutdoors: true, freezes: true, isOverPeople: true, quakes: true, heat: true },
  ...{ access: true, steps: true, narrowWidthUm: true, narrowHeightUm: true, lift: true },
  ...{ floor: true, hasOutlet: true, people: true, building: true, note: true },
  ...{ agreedMiddleUm: true, surveyedOn: true, staffId: true, at: true },
  obstacles: {
    select: {
      ...{ kind: true, words: true, leftUm: true, bottomUm: true, widthUm: true, heightUm: true },
    },
    orderBy: { position: 'asc' },
  },
  pictures: {
    select: {
      caption: true,
      file: { select: { id: true, widthPx: true, heightPx: true } },
    },
    orderBy: { position: 'asc' },
  },
} as const satisfies Prisma.WallSurveySelect;

/** A survey as {@link surveySelect} reads it. */
export type SurveyRow = Prisma.WallSurveyGetPayload<{ select: typeof surveySelect }>;

/** A picture of a wall. */
export type SurveyPictureKept = SurveyRow['pictures'][number];

/** A survey as it was kept; null is "not known yet", lengths in whole micrometres. */
export type SurveyKept = Omit<SurveyRow, 'surveyedOn' | 'obstacles'> & {
  readonly surveyedOn: Day;
  readonly obstacles: readonly Obstacle[];
};

/** A row as a survey is told. */
export function surveyOf(row: SurveyRow): SurveyKept {
  return { ...row, surveyedOn: dayFromDate(row.surveyedOn) };
}

/** The latest survey of a commission; null where nobody has looked. */
export async function loadSurvey(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<SurveyKept | null> {
  const row = await from.wallSurvey.findFirst({
    where: { commissionId },
    select: surveySelect,
    orderBy: { version: 'desc' },
  });
  return row && surveyOf(row);
}
