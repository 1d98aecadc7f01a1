import 'server-only';
import { parse, type Options } from 'csv-parse';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { FileLine } from '../rules/columns';
import { withoutGuard } from '@/lib/files/rules/csv';
import { fileBytesMost, fileLinesMost, type FileRefusal } from '../rules/refusals';

/** A file as it was read: its heading and the lines under it; empty lines are left out. */
export type CsvFile = { heading: readonly string[]; lines: readonly FileLine[] };

/**
 * Reads the bytes of a CSV file: RFC 4180, UTF-8 with a byte order mark or without, any line ends,
 * cells in quotation marks over several lines; semicolons or tabs where the heading has them. The
 * apostrophe that guards a formula is taken off.
 *
 * @returns refuses, in this order: too large, a spreadsheet, no text, not UTF-8, empty, not CSV,
 *   nothing under the heading, too many lines
 */
export async function readCsvFile(bytes: Uint8Array): Promise<Result<CsvFile, FileRefusal>> {
  const text = textOf(bytes);
  if (!text.ok) return text;
  const read = await linesOf(text.value);
  if (!read.ok) return read;
  const [heading, ...lines] = read.value;
  if (!heading) return refuse({ code: 'empty_file' });
  if (lines.length === 0) return refuse({ code: 'no_lines' });
  if (lines.length > fileLinesMost) return refuse({ code: 'too_many_lines' });
  return ok({ heading: heading.cells, lines });
}

function textOf(bytes: Uint8Array): Result<string, FileRefusal> {
  if (bytes.byteLength > fileBytesMost) return refuse({ code: 'file_too_large' });
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const head = buffer.subarray(0, 4).toString('latin1');
  if (/^(?:PK\u0003\u0004|\u00d0\u00cf\u0011\u00e0)/.test(head)) {
    return refuse({ code: 'spreadsheet_file' });
  }
  if (/^(?:\u00ff\u00fe|\u00fe\u00ff)/.test(head)) return refuse({ code: 'not_utf8' });
  if (buffer.includes(0)) return refuse({ code: 'not_text' });
  const text = buffer.toString('utf8');
  // What is not UTF-8 was replaced; a file may hold that sign itself, so the bytes are compared.
  if (text.includes('\ufffd') && !Buffer.from(text, 'utf8').equals(buffer)) {
    return refuse({ code: 'not_utf8' });
  }
  const bare = text.replace(/^\ufeff/, '');
  return bare.trim() === '' ? refuse({ code: 'empty_file' }) : ok(bare);
}

function linesOf(text: string): Promise<Result<FileLine[], FileRefusal>> {
  const found: FileLine[] = [];
  let linesBefore = 0;
  const take = (cells: readonly string[]) => {
    const line = linesBefore + 1;
    linesBefore += 1 + lineEndsIn(cells);
    if (cells.every((cell) => cell.trim() === '') || found.length > fileLinesMost + 1) return;
    found.push({ line, cells: cells.map(withoutGuard) });
  };
  return new Promise((resolve) => {
    parse(text, optionsFor(text, take), (error) => {
      resolve(error ? refuse({ code: 'not_csv', line: linesBefore + 1 }) : ok(found));
    });
  });
}

/** The parser counts the two signs of one line end inside a cell as two lines. */
function lineEndsIn(cells: readonly string[]): number {
  return cells.reduce((sum, cell) => sum + cell.split(/\r\n|\r|\n/).length - 1, 0);
}

function optionsFor(text: string, take: (cells: string[]) => void): Options {
  const heading = /^\s*([^\r\n]*)/.exec(text)?.[1] ?? '';
  const signs = [',', ';', '\t'].map((sign) => ({ sign, times: heading.split(sign).length }));
  const most = signs.reduce((best, each) => (each.times > best.times ? each : best));
  return {
    delimiter: most.sign,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    on_record: (cells: unknown) => {
      take(cells as string[]);
      return null;
    },
  };
}
