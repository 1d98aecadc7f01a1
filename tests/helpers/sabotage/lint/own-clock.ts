/** Reads the clock where the time should have come in. */
export function isLate(dueAt: Date): boolean {
  return dueAt < new Date();
}
