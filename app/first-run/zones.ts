import type { FieldOption } from '@/app/ui/form/field-props';

const near = [
  ['America/Los_Angeles', 'Pacific time'],
  ['America/Denver', 'Mountain time'],
  ['America/Phoenix', 'Mountain time, all year the same'],
  ['America/Chicago', 'Central time'],
  ['America/New_York', 'Eastern time'],
  ['America/Anchorage', 'Alaska time'],
  ['Pacific/Honolulu', 'Hawaii time'],
] as const;

/** The time zones to choose from: those of the United States first, then all others by name. */
export function zoneOptions(): readonly FieldOption[] {
  const named = near.map(([value, label]) => ({ value, label }));
  const known = new Set<string>(near.map(([value]) => value));
  const others = Intl.supportedValuesOf('timeZone').filter((zone) => !known.has(zone));
  return [...named, ...others.map((value) => ({ value, label: value.replaceAll('_', ' ') }))];
}
