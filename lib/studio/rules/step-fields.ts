/** The fields of one step, as a form names them: `s3-name` for the row with the key 3. */
export const stepFields = [
  ...(['name', 'peg', 'kind', 'benchId', 'cone', 'shortestDays', 'likelyDays'] as const),
  ...(['longestDays', 'isTogether', 'lossPercent', 'minutesEach', 'caution'] as const),
] as const;

/** The name of a field of a row of steps. */
export function stepField(row: string, field: (typeof stepFields)[number]): string {
  return `s${row}-${field}`;
}
