import { z } from 'zod';
import { known } from '@/lib/commissions/input/atoms';
import { lengthInput } from '@/lib/units/input';

/** The names of the fields that are lengths and weights end so. */
const isLength = /Um$/;
const isWeight = /G$/;
const bareNumber = /^\s*[\d.]+\s*$/;

/**
 * A form as it was typed, told in which unit a bare number stands: the gallery's own.
 *
 * `lengthUnit` is a hidden field of the form and is gone afterwards; inches and pounds are what the
 * fields take anyway.
 */
export function inOwnUnits(form: unknown): unknown {
  if (typeof form !== 'object' || form === null || !('lengthUnit' in form)) return form;
  const { lengthUnit, ...fields } = form;
  if (lengthUnit !== 'mm') return fields;
  const told = Object.entries(fields).map(([name, value]: [string, unknown]) => {
    if (typeof value !== 'string' || !bareNumber.test(value)) return [name, value];
    if (isLength.test(name)) return [name, `${value} mm`];
    return [name, isWeight.test(name) ? `${value} kg` : value];
  });
  return Object.fromEntries(told) as unknown;
}

/** A length that may be nothing: an outlet stands on the floor, brick has no board before it. */
export const lengthOrNothing = z.union([
  z
    .string()
    .regex(/^\s*0+(\.0+)?\s*(in|mm)?\s*$/)
    .transform(() => 0),
  lengthInput,
]);

/** A length that may not be known yet; at most `mostUm`, so that a slip of the pen is seen. */
export function knownLength(mostUm: number, fault: string) {
  return known(lengthInput.refine((um) => um <= mostUm, fault));
}

/** The same where it may be nothing at all. */
export function knownLengthOrNothing(mostUm: number, fault: string) {
  return known(lengthOrNothing.refine((um) => um <= mostUm, fault));
}

/** A few words, or none; never null. */
export function words(most: number) {
  return z.string().trim().max(most, `Keep it to ${most} letters.`).prefault('');
}

/** A whole number that may not be known yet. */
export function knownWhole(least: number, most: number, fault: string) {
  return known(
    z
      .string()
      .regex(/^\d{1,4}$/, fault)
      .transform(Number)
      .refine((number) => number >= least && number <= most, fault),
  );
}
