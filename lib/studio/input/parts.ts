import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { lossCauses } from '@/lib/studio/rules/jobs/losing';
import { partsMost } from '@/lib/studio/rules/parts/laying';
import { keptOutline, type Corner, type Shape } from '@/lib/studio/rules/parts/outline';
import { lengthInputIn } from '@/lib/units/input';

const notADrawing =
  'The drawing could not be read. It is still on this device: load the page again.';
/** What a drawing of three hundred parts with many corners takes, in characters. */
const drawingLengthMost = 600_000;
const cornersMost = 200;

const place = z.number().min(0).max(1000);
const corner = z.tuple([place, place]).transform((read): Corner => read);
const shape = z
  .strictObject({
    number: z.int().min(1).max(999),
    outline: z.array(corner).min(3).max(cornersMost),
    area: z.string().trim().max(80, 'Name colour areas in fewer words.'),
    note: z.string().trim().max(400, 'Write less about one part.'),
    hasSpare: z.boolean(),
  })
  .transform((read): Shape => ({ ...read, outline: keptOutline(read.outline) }));

/** The shapes of a drawing, from a page or a device; that they fit together is asked of the rules. */
export const shapesInput = z
  .array(shape)
  .max(partsMost, `A drawing has at most ${partsMost} parts.`);

const drawing = z
  .string()
  .max(drawingLengthMost, notADrawing)
  .transform((text, context): Shape[] => {
    const read = shapesInput.safeParse(parsedOrNull(text));
    if (read.success) return read.data;
    const said = read.error.issues.find(
      (issue) => issue.code === 'too_big' && issue.origin !== 'number',
    );
    context.addIssue({ code: 'custom', message: said?.message ?? notADrawing });
    return z.NEVER;
  });

function parsedOrNull(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}

/** The drawing of a job as its page sends it; lengths in `lengthUnit` unless they say otherwise. */
export const drawPartsInput = z
  .strictObject({
    requestKey: z.uuid(),
    jobId: z.uuid(),
    /** The version that was drawn on; 0 for the first. */
    version: z
      .string()
      .regex(/^\d{1,6}$/)
      .transform(Number),
    /** Saved in place of what somebody else drew meanwhile, and that version of theirs. */
    over: z
      .string()
      .regex(/^\d{0,6}$/)
      .default('')
      .transform((text) => (text === '' ? null : Number(text))),
    fileId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
    lengthUnit: z.enum(['in', 'mm']),
    width: z.string(),
    height: z.string(),
    drawing,
  })
  .transform(({ width, height, lengthUnit, drawing: shapes, ...rest }, context) => {
    const length = lengthInputIn(lengthUnit);
    const [widthUm, heightUm] = [length.safeParse(width), length.safeParse(height)];
    for (const [name, read] of [
      ['width', widthUm],
      ['height', heightUm],
    ] as const) {
      if (read.success) continue;
      const message = read.error.issues[0]?.message ?? 'Write how large the relief is.';
      context.addIssue({ code: 'custom', path: [name], message });
    }
    if (!widthUm.success || !heightUm.success) return z.NEVER;
    return { ...rest, shapes, widthUm: widthUm.data, heightUm: heightUm.data };
  });
/** What {@link drawPartsInput} reads. */
export type DrawPartsInput = z.output<typeof drawPartsInput>;

const partIds = z
  .string()
  .max(40 * 2 * partsMost)
  .transform((text) => [...new Set(text.split(',').filter((id) => id !== ''))])
  .pipe(z.array(z.uuid()).max(2 * partsMost));

/** Chosen parts going on to their next step. */
export const movePartsInput = z.strictObject({
  requestKey: z.uuid(),
  jobId: z.uuid(),
  partIds,
});
/** What {@link movePartsInput} reads. */
export type MovePartsInput = z.output<typeof movePartsInput>;

/** Chosen parts that were lost, all for one reason. */
export const losePartsInput = movePartsInput.extend({
  cause: z.enum(lossCauses, { message: 'Choose why.' }),
  note: z.string().trim().max(400, 'Say it in fewer words.').default(''),
});
/** What {@link losePartsInput} reads. */
export type LosePartsInput = z.output<typeof losePartsInput>;

/** Coats that were laid on chosen parts from one bucket. */
export const glazePartsInput = movePartsInput.extend({
  batchId: z.uuid('Choose the bucket that the glaze was taken from.'),
  coats: z
    .string()
    .trim()
    .regex(/^(?:[1-9]|1\d|20)$/, 'Write how many coats, from 1 to 20.')
    .transform(Number),
  on: dayInput,
});
/** What {@link glazePartsInput} reads. */
export type GlazePartsInput = z.output<typeof glazePartsInput>;
