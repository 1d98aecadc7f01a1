import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { BodyFacts } from '@/lib/commissions/rules/enquiry/cautions';
import { dayFromDate, type Day } from '@/lib/dates/rules';

/** Every column of a request, with the clay body and with who brought them. */
export const requestSelect = {
  wish: true,
  avoid: true,
  colours: true,
  exposure: true,
  wall: true,
  room: true,
  siteAddress: true,
  widthUm: true,
  heightUm: true,
  depthUm: true,
  hangHeightUm: true,
  wishedOn: true,
  wishedWhy: true,
  isDeadline: true,
  budgetFromCents: true,
  budgetToCents: true,
  decides: true,
  pays: true,
  wallOwner: true,
  freezes: true,
  sun: true,
  forFood: true,
  access: true,
  body: { select: { id: true, name: true, absorptionPercent: true, frostTested: true } },
  foundUs: true,
  broughtBy: { select: { id: true, name: true } },
  broughtPercent: true,
  broughtKnown: true,
  askedAt: true,
  takenBy: { select: { name: true } },
} as const satisfies Prisma.CommissionSelect;

/** A commission as {@link requestSelect} reads it; it may hold more. */
export type RequestRow = Prisma.CommissionGetPayload<{ select: typeof requestSelect }>;

/** The clay body that was thought of. */
export type BodyTold = BodyFacts & { readonly id: string; readonly name: string };

/** Who brought the collector. */
export type BroughtBy = { readonly id: string; readonly name: string };

/** What was asked for; null is "not known yet". */
export type RequestTold = Omit<
  RequestRow,
  'wishedOn' | 'body' | 'broughtPercent' | 'takenBy' | 'broughtBy'
> & {
  wishedOn: Day | null;
  body: BodyTold | null;
  broughtBy: BroughtBy | null;
  /** Decimal text without needless zeros; '0' for none, written so. */
  broughtPercent: string | null;
  takenBy: string;
};

/**
 * A request as pages and papers tell it.
 *
 * @param row may hold more columns than those of a request; they are left out
 */
export function requestOf(row: RequestRow): RequestTold {
  const { wish, avoid, colours, exposure, wall, room, siteAddress } = row;
  const { widthUm, heightUm, depthUm, hangHeightUm, budgetFromCents, budgetToCents } = row;
  const { wishedWhy, isDeadline, decides, pays, wallOwner, freezes, sun, forFood } = row;
  const { access, foundUs, broughtBy, broughtKnown, askedAt } = row;
  return {
    ...{ wish, avoid, colours, exposure, wall, room, siteAddress },
    ...{ widthUm, heightUm, depthUm, hangHeightUm, budgetFromCents, budgetToCents },
    ...{ wishedWhy, isDeadline, decides, pays, wallOwner, freezes, sun, forFood },
    ...{ access, foundUs, broughtBy, broughtKnown, askedAt },
    wishedOn: row.wishedOn && dayFromDate(row.wishedOn),
    body: bodyOf(row.body),
    broughtPercent: row.broughtPercent?.toString() ?? null,
    takenBy: row.takenBy.name,
  };
}

function bodyOf(body: RequestRow['body']): BodyTold | null {
  if (!body) return null;
  return { ...body, absorptionPercent: body.absorptionPercent?.toString() ?? null };
}
