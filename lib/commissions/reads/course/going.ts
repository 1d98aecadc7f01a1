import type { Prisma } from '@/generated/prisma/client';

/** Neither ended nor handed over; or handed over with something left on account at that moment. */
export const stillGoing: Prisma.CommissionWhereInput = {
  ending: null,
  OR: [
    { handOver: null },
    { handOver: { is: { sale: { tenders: { some: { kind: 'on_account' } } } } } },
  ],
};
