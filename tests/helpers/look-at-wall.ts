import { db } from '@/lib/platform/db/client';

/** Somebody has looked at the wall of a commission: wood studs. A hanging is booked only then. */
export async function lookAtWall(commissionId: string): Promise<void> {
  const { takenById, askedAt, askedOn } = await db().commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: { takenById: true, askedAt: true, askedOn: true },
  });
  const version = (await db().wallSurvey.count({ where: { commissionId } })) + 1;
  await db().wallSurvey.create({
    data: {
      ...{ commissionId, version, wall: 'wood_studs' },
      provedHow: 'Magnet and an inspection hole.',
      ...{ surveyedOn: askedOn, staffId: takenById, at: askedAt },
    },
  });
}
