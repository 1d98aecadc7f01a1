import { z } from 'zod';
import { saidLine } from '@/lib/commissions/input/atoms';
import { linkDaysBetween, linkDaysUsual } from '@/lib/commissions/rules/page/link';

const { least, most } = linkDaysBetween;
const howLong = `Say for how many days: ${least} to ${most}.`;

/** For how many days an address opens the page. */
export const linkDays = z
  .string()
  .trim()
  .regex(/^\d{1,3}$/, howLong)
  .transform(Number)
  .refine((days) => days >= least && days <= most, howLong)
  .prefault(String(linkDaysUsual));

/** A new address for the collector's page. */
export const makeLinkInput = z.strictObject({
  requestKey: z.uuid(),
  commissionId: z.uuid(),
  forName: saidLine('Write for whom it is made.', 120),
  days: linkDays,
});
/** What {@link makeLinkInput} reads. */
export type MakeLinkInput = z.output<typeof makeLinkInput>;

/** Withdrawing an address. */
export const withdrawLinkInput = z.strictObject({
  requestKey: z.uuid(),
  commissionId: z.uuid(),
  linkId: z.uuid(),
});
/** What {@link withdrawLinkInput} reads. */
export type WithdrawLinkInput = z.output<typeof withdrawLinkInput>;
