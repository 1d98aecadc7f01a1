/** A length of time as the field of hours wants it: 90 minutes is `1.5`. */
export function hoursTyped(minutes: number): string {
  return String(Math.round((minutes / 60) * 100) / 100);
}
