/** Signs at which a spreadsheet begins to reckon, or that it takes for another cell. */
const reckons = /^'*[=+\-@\t\r\n＝＋－＠]/;
const plainNumber = /^-?\d+(?:\.\d+)?$/;

/**
 * A text made safe for a spreadsheet: what it would take for a formula gets an apostrophe before
 * it. A plain number stays a number, also one below zero.
 *
 * A text that begins with apostrophes and then such a sign gets one more, so that
 * {@link withoutGuard} gives back exactly what was guarded.
 *
 * @source common practice against formulas in files
 * @example guarded('=1+1') // "'=1+1"; guarded("'=1+1") // "''=1+1"
 */
export function guarded(text: string): string {
  return reckons.test(text) && !plainNumber.test(text) ? `'${text}` : text;
}

/**
 * Takes the apostrophe off that {@link guarded} put before a text; any other text stays.
 *
 * @example withoutGuard("'=1+1") // '=1+1'; withoutGuard("'t Anker") stays as it is
 */
export function withoutGuard(cell: string): string {
  return cell.startsWith("'") && reckons.test(cell) ? cell.slice(1) : cell;
}

/**
 * Rows as a CSV file: commas, CRLF after every row, quotation marks where they are needed, a byte
 * order mark so that every spreadsheet reads it as UTF-8. Texts are {@link guarded}.
 *
 * @source RFC 4180, section 2
 * @example csvText([['a', 'b,c']]) // '\uFEFFa,"b,c"\r\n'
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return `\uFEFF${rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('')}`;
}

function cellText(text: string): string {
  const safe = guarded(text);
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
