import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

const byPosition = { orderBy: { position: 'asc' } } as const;

/** Everything of a commission that was said, shown, signed, paid and written to somebody. */
const include = {
  pictures: { select: { fileId: true, caption: true, at: true } },
  proposals: {
    omit: { buildUp: true, areaCents: true, costCents: true },
    include: { lines: byPosition, steps: byPosition, sent: true, answer: true },
    orderBy: { version: 'asc' },
  },
  agreements: { include: { lines: byPosition, steps: byPosition }, orderBy: { version: 'asc' } },
  changeOrders: { include: { signed: true, withdrawn: true }, orderBy: { number: 'asc' } },
  changesAsked: { include: { spots: true } },
  sketches: { select: { letter: true, note: true, shownOn: true, fileId: true } },
  colourTiles: { select: { number: true, glazes: true, shownOn: true, fileId: true, given: true } },
  approvals: true,
  instalments: { include: { withdrawn: true } },
  payments: true,
  refunds: true,
  startOverride: true,
  handOver: true,
  ending: true,
  appointments: true,
  dayOffers: { include: { slots: true, chosen: true } },
  links: { omit: { tokenSha256: true } },
  mails: true,
  delays: true,
  progress: { where: { shared: true } },
} as const satisfies Prisma.CommissionInclude;

/** The commissions of somebody, whatever became of them, with the names under what was signed. */
export async function readCommissionsKept(from: Prisma.TransactionClient, ids: readonly string[]) {
  const rows = await from.commission.findMany({
    where: { collectorId: { in: [...ids] } },
    include,
    orderBy: { number: 'asc' },
  });
  const signatures = await from.signature.findMany({
    where: { commissionId: { in: rows.map(({ id }) => id) } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  const brought = await from.commission.findMany({
    where: { broughtById: { in: [...ids] } },
    select: { number: true, title: true, broughtPercent: true, broughtKnown: true },
    orderBy: { number: 'asc' },
  });
  const commissions = rows.map((row) => ({
    ...row,
    signatures: signatures.filter(({ commissionId }) => commissionId === row.id),
  }));
  return { commissions, brought };
}
