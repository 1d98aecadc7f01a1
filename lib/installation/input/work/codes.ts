import { z } from 'zod';

/** The form that keeps the codes of doors and alarms for one day; empty strikes them out. */
export const keepCodesInput = z.strictObject({
  requestKey: z.uuid(),
  appointmentId: z.uuid(),
  codes: z.string().trim().max(300, 'Keep it to 300 letters.').prefault(''),
});

/** What {@link keepCodesInput} reads. */
export type KeepCodesInput = z.output<typeof keepCodesInput>;
