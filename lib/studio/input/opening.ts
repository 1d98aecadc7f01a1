import { z } from 'zod';
import { lossCauses } from '@/lib/studio/rules';
import { outcomes } from '@/lib/studio/rules/firings/opening';
import { inCelsius, meterInput, readDegrees } from './firings';
import { countInput, scaleInput } from './kilns';

const note = z.string().trim().max(300, 'Say it in fewer words.').default('');
const howManyCameOut = z.preprocess(
  (typed) => (typed === '' ? undefined : typed),
  countInput(0, 2_000, 'Write a number, or 0.').default(0),
);

/** How one line came out, by the names of its fields. */
const lineTold = z.strictObject({
  second: howManyCameOut,
  again: howManyCameOut,
  lost: howManyCameOut,
  cause: z.union([z.literal('').transform(() => null), z.enum(lossCauses)]).default(null),
  note,
});

const partOutcome = z.enum(outcomes);

/**
 * A kiln that is opened. Fields of a line are `second.<line>`, `again.<line>`, `lost.<line>`,
 * `cause.<line>` and `note.<line>`; of a part `part.<line>.<part>` says how it came out.
 */
export const openKilnInput = z
  .object({
    requestKey: z.uuid(),
    firingId: z.uuid(),
    degrees: scaleInput,
    reading: z.union([z.literal('').transform(() => null), readDegrees]).default(null),
    meterKwh: meterInput,
    coneFell: z.string().trim().max(120, 'Say it in fewer words.').default(''),
  })
  .catchall(z.string().max(400))
  .transform((typed, context) => {
    const { requestKey, firingId, degrees, reading, coneFell } = typed;
    const fields: Record<string, string> = {};
    for (const [name, text] of Object.entries(typed)) {
      if (name.includes('.') && typeof text === 'string') fields[name] = text;
    }
    const readC = reading === null ? null : inCelsius(reading, degrees);
    const told = linesTold(fields, context);
    return { requestKey, firingId, readC, meterKwh: typed.meterKwh, coneFell, told };
  });
/** What {@link openKilnInput} reads. */
export type OpenKilnInput = z.output<typeof openKilnInput>;

function linesTold(fields: Readonly<Record<string, string>>, context: z.RefinementCtx) {
  const lineIds = new Set(Object.keys(fields).map((name) => name.split('.')[1] ?? ''));
  return [...lineIds].flatMap((lineId) => {
    const of = (name: string) => fields[`${name}.${lineId}`];
    const names = ['second', 'again', 'lost', 'cause', 'note'] as const;
    const read = lineTold.safeParse(Object.fromEntries(names.map((name) => [name, of(name)])));
    if (!read.success) {
      for (const { path, message } of read.error.issues) {
        context.addIssue({ code: 'custom', path: [`${String(path[0])}.${lineId}`], message });
      }
      return [];
    }
    const { again: fireAgain, ...told } = read.data;
    return [{ lineId, fireAgain, ...told, parts: partsTold(fields, lineId) }];
  });
}

function partsTold(fields: Readonly<Record<string, string>>, lineId: string) {
  const before = `part.${lineId}.`;
  return Object.entries(fields).flatMap(([name, text]) => {
    const outcome = partOutcome.safeParse(text);
    if (!name.startsWith(before) || !outcome.success) return [];
    return [{ partId: name.slice(before.length), outcome: outcome.data }];
  });
}
