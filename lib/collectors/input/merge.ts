import { z } from 'zod';

/** Two that are one: `keep` is whose entry is kept. */
export const mergeInput = z
  .strictObject({
    requestKey: z.uuid(),
    oneId: z.uuid(),
    otherId: z.uuid(),
    keep: z.uuid({ error: 'Say whose entry is kept.' }),
  })
  .refine(({ oneId, otherId, keep }) => keep === oneId || keep === otherId, {
    path: ['keep'],
    message: 'Say whose entry is kept.',
  });

/** What {@link mergeInput} gives. */
export type MergeInput = z.output<typeof mergeInput>;

/** The merge that is undone. */
export const setApartInput = z.strictObject({ requestKey: z.uuid(), mergeId: z.uuid() });

/** What {@link setApartInput} gives. */
export type SetApartInput = z.output<typeof setApartInput>;
