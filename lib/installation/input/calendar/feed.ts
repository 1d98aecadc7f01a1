import { z } from 'zod';

/** A new address of somebody's calendar. */
export const makeFeedInput = z.strictObject({
  requestKey: z.uuid(),
  staffId: z.uuid('Choose whose calendar it is.'),
  forWhat: z
    .string()
    .trim()
    .min(1, 'Write where it will be used, such as “telephone”.')
    .max(60, 'Say it in fewer words.'),
});
/** What {@link makeFeedInput} reads. */
export type MakeFeedInput = z.output<typeof makeFeedInput>;

/** Withdrawing an address of a calendar. */
export const withdrawFeedInput = z.strictObject({ requestKey: z.uuid(), feedId: z.uuid() });
/** What {@link withdrawFeedInput} reads. */
export type WithdrawFeedInput = z.output<typeof withdrawFeedInput>;
