import type { SurveyTold } from '@/lib/installation/reads/survey/told';
import { formatLength, formatWeight, umPerInch, type LengthSystem } from '@/lib/units/rules';

/** A length as a field takes it, without its unit; empty for what is not known, 0 for none. */
export function measureText(um: number | null | undefined, unit: LengthSystem): string {
  if (um === null || um === undefined) return '';
  return um === 0 ? '0' : formatLength(um, unit).replace(/ (in|mm)$/, '');
}

/** So many inches, in the unit that is read here. */
export function inchesText(inches: number, unit: LengthSystem): string {
  return formatLength(Math.round(inches * umPerInch), unit);
}

/** A weight as a field takes it; empty for what is not known. */
export function weightText(grams: number | null | undefined, unit: LengthSystem): string {
  if (!grams) return '';
  return formatWeight(grams, unit === 'in' ? 'lb' : 'kg');
}

/** The unit of weights beside a unit of lengths. */
export function weightUnit(unit: LengthSystem): 'lb' | 'kg' {
  return unit === 'in' ? 'lb' : 'kg';
}

type Words =
  | 'provedHow'
  | 'backing'
  | 'services'
  | 'heat'
  | 'access'
  | 'lift'
  | 'floor'
  | 'people'
  | 'building'
  | 'note';

/** What was written of a wall, as a field begins with it. */
export function wordsOf(known: SurveyTold | null, name: Words): string {
  return known?.[name] ?? '';
}

/** A count that was written of a wall, as a field begins with it. */
export function countOf(known: SurveyTold | null, name: 'steps' | 'steelGauge'): string {
  return known?.[name]?.toString() ?? '';
}
