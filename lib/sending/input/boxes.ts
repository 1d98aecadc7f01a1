import { z } from 'zod';
import { paddingMostUm } from '@/lib/freight/rules/boxing';
import { lengthInputIn, weightInputIn } from '@/lib/units/input';
import { parseLength, type LengthSystem } from '@/lib/units/rules';
import { emptyOr } from './empty-or';

const listText = z.string().max(40_000, 'That is too long a list for one shipment.');

/** The form that has boxes proposed for what is to go; the boxes that were there go. */
export const proposeBoxesInput = z.object({
  requestKey: z.uuid(),
  shipmentId: z.uuid(),
  pieces: listText,
});

/** The box of a form: outside, padding, weight on the scale, contents; a bare figure is in `unit`. */
export function boxInput(unit: LengthSystem) {
  const length = lengthInputIn(unit);
  const weight = weightInputIn(unit === 'in' ? 'lb' : 'kg');
  return z.object({
    requestKey: z.uuid(),
    shipmentId: z.uuid(),
    /** Null for a new one. */
    crateId: z.union([z.uuid(), z.literal('').transform(() => null)]).prefault(''),
    kind: z.enum(['box', 'double_box', 'crate'], { error: 'Choose what it is.' }),
    ...{ lengthUm: length, widthUm: length, heightUm: length },
    paddingUm: paddingIn(unit),
    scaleG: emptyOr(weight),
    contents: listText,
    note: z.string().trim().max(400, 'At most 400 characters, please.').prefault(''),
  });
}

/** Padding may be none. */
function paddingIn(unit: LengthSystem) {
  return z.string().transform((text, context) => {
    const typed = text.trim();
    if (/^0*$/.test(typed)) return 0;
    const read = parseLength(typed, unit);
    if (read.ok && read.value <= paddingMostUm) return read.value;
    context.addIssue({ code: 'custom', message: 'Write the padding, from none to a foot.' });
    return z.NEVER;
  });
}

/** The form that takes a box away with what is in it. */
export const removeBoxInput = z.object({
  requestKey: z.uuid(),
  shipmentId: z.uuid(),
  crateId: z.uuid(),
});

const idsInput = z
  .union([z.uuid().transform((id) => [id]), z.array(z.uuid())])
  .prefault([] as string[]);

/** The form that puts some of what is in a box into another, or into a new one. */
export const moveContentsInput = z.object({
  requestKey: z.uuid(),
  shipmentId: z.uuid(),
  fromId: z.uuid(),
  contentIds: idsInput,
  toId: z.union([z.uuid(), z.literal('new')]),
});

/** The form that writes down what the scale says, a field `scale.<position>` for each box. */
export function weighBoxesInput(unit: LengthSystem) {
  const weight = weightInputIn(unit === 'in' ? 'lb' : 'kg');
  return z.preprocess(
    gatherScales,
    z.object({
      requestKey: z.uuid(),
      shipmentId: z.uuid(),
      scale: z.record(z.string().regex(/^\d{1,2}$/), emptyOr(weight)),
    }),
  );
}

function gatherScales(form: unknown): unknown {
  if (typeof form !== 'object' || form === null || 'scale' in form) return form;
  const entries = Object.entries(form);
  const scale = entries.flatMap(([name, value]) => {
    const match = /^scale\.(\d{1,2})$/.exec(name);
    return match ? [[match[1] ?? '', value] as const] : [];
  });
  const rest = entries.filter(([name]) => !name.startsWith('scale.'));
  return { ...Object.fromEntries(rest), scale: Object.fromEntries(scale) };
}

/** See {@link proposeBoxesInput}. */
export type ProposeBoxesInput = z.output<typeof proposeBoxesInput>;
/** See {@link boxInput}. */
export type BoxInput = z.output<ReturnType<typeof boxInput>>;
/** See {@link removeBoxInput}. */
export type RemoveBoxInput = z.output<typeof removeBoxInput>;
/** See {@link moveContentsInput}. */
export type MoveContentsInput = z.output<typeof moveContentsInput>;
/** See {@link weighBoxesInput}. */
export type WeighBoxesInput = z.output<ReturnType<typeof weighBoxesInput>>;
