/** The figure at a place of a row; 0 outside it. */
export function at(row: Int32Array, place: number): number {
  return row[place] ?? 0;
}

/** Adds to the figure at a place of a row. */
export function add(row: Int32Array, place: number, more: number): void {
  row[place] = (row[place] ?? 0) + more;
}
