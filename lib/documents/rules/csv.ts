/**
 * One field of a CSV file. A text that a spreadsheet would take for a formula gets an apostrophe
 * before it; a plain number, also one below zero, stays a number.
 *
 * @source RFC 4180 for the quoting; the apostrophe is common practice against formulas in files
 * @example csvField('=1+1') // "'=1+1"; csvField('-12.50') stays as it is
 */
export function csvField(text: string): string {
  const isNumber = /^-?\d+(?:\.\d+)?$/.test(text);
  const safe = !isNumber && /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Rows as a CSV file: commas, CRLF after every row, a byte order mark so that every spreadsheet
 * reads it as UTF-8.
 *
 * @source RFC 4180
 */
export function csvFile(rows: readonly (readonly string[])[]): string {
  return `\uFEFF${rows.map((row) => `${row.map(csvField).join(',')}\r\n`).join('')}`;
}
