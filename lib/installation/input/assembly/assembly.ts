import { z } from 'zod';
import { saidLine } from '@/lib/commissions/input/atoms';
import { dayInput, timeInput } from '@/lib/dates/input';
import { cureHours } from '@/lib/installation/rules/assembly/cure';
import { celsiusOf } from '@/lib/studio/rules/kilns/degrees';

const hoursIn = { hours: 1, days: 24 } as const;
const degreesMust = 'Write whole degrees, or leave it empty.';

/** Pieces were set on their board. */
export const assemblyInput = z
  .strictObject({
    requestKey: z.uuid(),
    commissionId: z.uuid(),
    board: saidLine('Write what they were set on, such as “19 mm plywood, sealed”.', 120),
    adhesive: saidLine('Write what they were set with.', 120),
    lot: z.string().trim().max(60, 'Keep it to 60 letters.').default(''),
    finishedOn: dayInput,
    finishedAt: timeInput,
    room: z
      .string()
      .trim()
      .regex(/^(-?\d{1,3})?$/, degreesMust)
      .default(''),
    scale: z.enum(['C', 'F']),
    cure: z
      .string()
      .trim()
      .regex(/^\d{1,4}$/, 'Write how long, in whole hours or days.')
      .transform(Number),
    cureIn: z.enum(['hours', 'days'], { error: 'Say whether those are hours or days.' }),
    scrap: z.literal('yes').optional(),
    note: z.string().trim().max(1_000, 'Keep it to 1,000 letters.').default(''),
  })
  .transform(({ room, scale, cure, cureIn, scrap, finishedOn, finishedAt, ...said }, context) => {
    const hours = cure * hoursIn[cureIn];
    const roomC = room === '' ? null : scale === 'F' ? celsiusOf(Number(room)) : Number(room);
    if (hours < cureHours.least || hours > cureHours.most) {
      const message = `From ${cureHours.least} hour to ${cureHours.most / 24} days.`;
      context.addIssue({ code: 'custom', path: ['cure'], message });
    }
    if (roomC !== null && (roomC < -30 || roomC > 60)) {
      context.addIssue({
        code: 'custom',
        path: ['room'],
        message: 'No room is that cold or warm.',
      });
    }
    const set = { on: finishedOn, at: finishedAt, cureHours: hours };
    return { ...said, set, roomC, scrapKept: scrap === 'yes' };
  });
/** What {@link assemblyInput} reads. */
export type AssemblyInput = z.output<typeof assemblyInput>;
