/** The fields of one row of what is on a wall. */
export const obstacleFields = [
  'kind',
  'words',
  'leftUm',
  'bottomUm',
  'widthUm',
  'heightUm',
] as const;

/** One of the {@link obstacleFields}. */
export type ObstacleField = (typeof obstacleFields)[number];

/** How many rows a survey has at most. */
export const obstaclesMost = 24;

/**
 * The name of a field of a row, as the form sends it.
 *
 * @example obstacleField(0, 'leftUm') // 'o0-leftUm'
 */
export function obstacleField(row: number, field: ObstacleField): string {
  return `o${row}-${field}`;
}
