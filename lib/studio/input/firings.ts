import { z } from 'zod';
import { dayInput, timeInput } from '@/lib/dates/input';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { celsiusOf, climbInCelsius, type Scale } from '@/lib/studio/rules/kilns/degrees';
import type { Firing, Segment } from '@/lib/studio/rules/kilns/firing';
import { lengthInputIn } from '@/lib/units/input';
import { countInput, scaleInput } from './kilns';

/** The most pieces of one job in a load. */
const piecesMost = 2_000;
/** How many segments a schedule’s form has rows for. */
export const segmentRows = 8;

const note = z.string().trim().max(300, 'Say it in fewer words.').default('');
const howMany = countInput(1, piecesMost, 'Write how many pieces go in.');
const listOfIds = z
  .union([z.uuid(), z.array(z.uuid()).max(piecesMost)])
  .transform((ids) => [ids].flat())
  .default([]);

/** A firing to plan. */
export const planFiringInput = z.strictObject({
  requestKey: z.uuid(),
  kilnId: z.uuid('Choose a kiln.'),
  kind: z.enum(['bisque', 'glaze'], { message: 'Choose what it is fired for.' }),
  cone: z.string().max(6),
  plannedOn: dayInput,
});
/** What {@link planFiringInput} reads. */
export type PlanFiringInput = z.output<typeof planFiringInput>;

const optionalLength = (unit: 'in' | 'mm') =>
  z.union([z.literal('').transform(() => null), lengthInputIn(unit)]);

/** A line of a load: laid in, changed, or with other parts. */
export const layLineInput = z
  .strictObject({
    requestKey: z.uuid(),
    firingId: z.uuid(),
    jobId: z.uuid(),
    position: countInput(1, 99, 'Choose what is laid in.'),
    pieces: howMany.optional(),
    partIds: listOfIds,
    lengthUnit: z.enum(['in', 'mm']),
    width: z.string().default(''),
    depth: z.string().default(''),
    height: z.string().default(''),
  })
  .transform(({ lengthUnit, width, depth, height, ...line }, context) => {
    const read = (name: string, typed: string): number | null => {
      const um = optionalLength(lengthUnit).safeParse(typed);
      if (um.success) return um.data;
      const message = um.error.issues.at(-1)?.message ?? '';
      context.addIssue({ code: 'custom', path: [name], message });
      return null;
    };
    return {
      ...line,
      pieces: line.pieces ?? Math.max(1, line.partIds.length),
      widthUm: read('width', width),
      depthUm: read('depth', depth),
      heightUm: read('height', height),
    };
  });
/** What {@link layLineInput} reads. */
export type LayLineInput = z.output<typeof layLineInput>;

/** A line that is taken out of a load. */
export const takeLineOutInput = z.strictObject({ requestKey: z.uuid(), lineId: z.uuid() });
/** What {@link takeLineOutInput} reads. */
export type TakeLineOutInput = z.output<typeof takeLineOutInput>;

/** A firing that does not come about. */
export const callOffInput = z.strictObject({ requestKey: z.uuid(), firingId: z.uuid() });
/** What {@link callOffInput} reads. */
export type CallOffInput = z.output<typeof callOffInput>;

const degreesWords = 'Write whole degrees.';
const figure = z.string().trim().max(6).default('');

/** A schedule as its form sends it: rows in the scale the form was drawn in; empty rows are left out. */
export const keepScheduleInput = z
  .object({
    requestKey: z.uuid(),
    firingId: z.uuid(),
    degrees: scaleInput,
    from: figure,
    plannedOn: dayInput,
    note,
  })
  .catchall(figure)
  .transform((typed, context) => {
    const { requestKey, firingId, degrees, plannedOn, note: noted } = typed;
    const whole = (name: string, text: string): number => {
      if (/^\d{1,5}$/.test(text)) return Number(text);
      context.addIssue({ code: 'custom', path: [name], message: degreesWords });
      return 0;
    };
    const segments: Segment[] = [];
    for (let row = 1; row <= segmentRows; row += 1) {
      const [to, rate, soak] = ['to', 'rate', 'soak'].map((name) =>
        rowText(typed, `${name}${row}`),
      );
      if (!to && !rate) continue;
      segments.push({
        toC: inCelsius(whole(`to${row}`, to ?? ''), degrees),
        rateCPerHour: climbOf(whole(`rate${row}`, rate ?? ''), degrees),
        soakMinutes: soak ? whole(`soak${row}`, soak) : 0,
      });
    }
    const fromC = inCelsius(whole('from', typed.from), degrees);
    const schedule: Firing = { fromC, segments };
    return { requestKey, firingId, plannedOn, note: noted, schedule };
  });
/** What {@link keepScheduleInput} reads. */
export type KeepScheduleInput = z.output<typeof keepScheduleInput>;

function rowText(typed: Readonly<Record<string, unknown>>, name: string): string {
  const text = typed[name];
  return typeof text === 'string' ? text : '';
}

/** Degrees as they were typed, in whole °C. */
export function inCelsius(degrees: number, scale: Scale): number {
  return scale === 'F' ? celsiusOf(degrees) : degrees;
}

function climbOf(rate: number, scale: Scale): number {
  return scale === 'F' ? climbInCelsius(rate) : rate;
}

/** A schedule as it was kept in its row. */
export const scheduleKept = z.object({
  fromC: z.number(),
  segments: z.array(
    z.object({ toC: z.number(), rateCPerHour: z.number(), soakMinutes: z.number() }),
  ),
});

/** Corners of a part’s outline as they were kept in its row. */
export const outlineKept = z.array(z.tuple([z.number(), z.number()]));

/** What a meter says, in kWh as decimal text; null where nobody looked. */
export const meterInput = z
  .union([
    z.literal('').transform(() => null),
    z
      .string()
      .trim()
      .refine((text) => isMeter(text), 'Write what the meter says in kWh, such as 10482.5.'),
  ])
  .default(null);

function isMeter(text: string): boolean {
  const read = parseDecimal(text);
  return !!read && read.units >= 0n && read.scale <= 3 && /^\d{1,9}(\.|$)/.test(text);
}

/** A kiln that is lit. */
export const lightKilnInput = z.strictObject({
  requestKey: z.uuid(),
  firingId: z.uuid(),
  saidOfDry: z.string().trim().max(300, 'Say it in fewer words.').default(''),
  meterKwh: meterInput,
});
/** What {@link lightKilnInput} reads. */
export type LightKilnInput = z.output<typeof lightKilnInput>;

/** What a kiln reads, as it is typed. */
export const readDegrees = countInput(0, 2_600, 'Write what the kiln reads, in whole degrees.');

/** What a kiln read, and when; without a time it was just now. */
export const noteReadingInput = z
  .strictObject({
    requestKey: z.uuid(),
    firingId: z.uuid(),
    degrees: scaleInput,
    reading: readDegrees,
    on: z.union([z.literal('').transform(() => null), dayInput]).default(null),
    time: z.union([z.literal('').transform(() => null), timeInput]).default(null),
    note,
  })
  .transform(({ degrees, reading, ...rest }) => ({
    ...rest,
    celsius: inCelsius(reading, degrees),
  }));
/** What {@link noteReadingInput} reads. */
export type NoteReadingInput = z.output<typeof noteReadingInput>;

/** The number of a firing, from an address. */
export const firingNumberInput = z
  .string()
  .regex(/^[1-9]\d{0,8}$/)
  .transform(Number);
