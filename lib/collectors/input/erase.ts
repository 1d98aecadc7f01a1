import { z } from 'zod';

/** Whose data are struck out; `typed` is their name, typed by whoever does it. */
export const eraseInput = z.strictObject({
  requestKey: z.uuid(),
  collectorId: z.uuid(),
  typed: z.string().trim().min(1, 'Type their name as it stands above.'),
});

/** What {@link eraseInput} gives. */
export type EraseInput = z.output<typeof eraseInput>;
