import { z } from 'zod';
import { percentInput } from '@/lib/money/input';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { cones } from '@/lib/studio/rules/kilns/cones';
import { stepField, stepFields } from '@/lib/studio/rules/step-fields';
import { pegs, stepKinds, techniques, type RouteStep } from '@/lib/studio/rules/routes';

/** The most steps that a route has. */
export const routeStepsMost = 30;
const daysMost = 400;

const wholeDays = z
  .string()
  .trim()
  .regex(/^\d{1,3}$/, 'Write whole days, such as 3.')
  .transform(Number)
  .refine((days) => days <= daysMost, `At most ${daysMost} days.`);

const minutes = z
  .string()
  .trim()
  .refine((text) => {
    const decimal = parseDecimal(text);
    return decimal !== null && decimal.units >= 0n && decimal.scale <= 2 && text.length <= 8;
  }, 'Write minutes, such as 6 or 4.5.');

const stepInput = z
  .object({
    name: z.string().trim().min(2, 'Say what is done.').max(60, 'Say it in fewer words.'),
    peg: z.enum(pegs, { message: 'Say what it fills.' }),
    kind: z.enum(stepKinds, { message: 'Say what holds the pieces.' }),
    benchId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
    cone: z.union([z.literal(''), z.enum(cones)]).default(''),
    shortestDays: wholeDays,
    likelyDays: wholeDays,
    longestDays: wholeDays,
    isTogether: z.enum(['one_by_one', 'together']).transform((way) => way === 'together'),
    lossPercent: percentInput,
    minutesEach: minutes,
    caution: z.string().trim().max(600, 'Say it in fewer words.').default(''),
  })
  .superRefine((step, context) => {
    const at = (field: string, message: string) =>
      context.addIssue({ code: 'custom', path: [field], message });
    if (step.shortestDays > step.likelyDays) at('likelyDays', 'Not below the shortest.');
    if (step.likelyDays > step.longestDays) at('longestDays', 'Not below the likely days.');
    if (step.kind === 'work' && step.benchId === null) at('benchId', 'Say at which bench.');
    if (step.kind === 'fire' && step.cone === '') at('cone', 'Say to which cone.');
    if (Number(step.lossPercent) >= 100) at('lossPercent', 'Less than 100.');
    const takesADay = step.kind === 'fire' || Number(step.lossPercent) > 0;
    if (takesADay && step.shortestDays < 1) at('shortestDays', 'At least a day.');
  })
  .transform((step): RouteStep => ({
    ...step,
    benchId: step.kind === 'work' ? step.benchId : null,
    cone: step.kind === 'fire' ? step.cone : '',
  }));

/**
 * A route from its form: the rows come as `s<key>-<field>`, and `rows` says which keys there are
 * and in which order. What is wrong is told at the field of its row.
 */
export const keepRouteInput = z
  .looseObject({
    requestKey: z.uuid(),
    routeId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
    name: z.string().trim().min(2, 'Give it a name.').max(80, 'Say it in fewer words.'),
    technique: z.enum(techniques, { message: 'Choose how it is made.' }),
    isUsual: z.literal('on').optional(),
    rows: z.string().regex(/^\d{1,4}(,\d{1,4})*$/, 'A route has at least one step.'),
  })
  .transform((form, context) => {
    const { requestKey, routeId, name, technique, isUsual } = form;
    const rows = [...new Set(form.rows.split(','))];
    if (rows.length > routeStepsMost) {
      context.addIssue({ code: 'custom', message: `At most ${routeStepsMost} steps.` });
      return z.NEVER;
    }
    const steps = rows.flatMap((row) => {
      const typed = stepFields.map((field) => [field, form[stepField(row, field)]]);
      const read = stepInput.safeParse(Object.fromEntries(typed));
      if (read.success) return [read.data];
      for (const { path, message } of read.error.issues) {
        context.addIssue({ code: 'custom', path: [`s${row}-${String(path[0])}`], message });
      }
      return [];
    });
    const names = steps.map((step) => step.name.toLowerCase());
    for (const [at, own] of names.entries()) {
      if (names.indexOf(own) === at) continue;
      const message = 'Another step of it has this name.';
      context.addIssue({ code: 'custom', path: [`s${rows[at] ?? ''}-name`], message });
    }
    return { requestKey, routeId, name, technique, isUsual: isUsual === 'on', steps };
  });
/** What {@link keepRouteInput} reads. */
export type KeepRouteInput = z.output<typeof keepRouteInput>;

/** A route that is put away. */
export const endRouteInput = z.strictObject({ requestKey: z.uuid(), routeId: z.uuid() });
/** What {@link endRouteInput} reads. */
export type EndRouteInput = z.output<typeof endRouteInput>;
