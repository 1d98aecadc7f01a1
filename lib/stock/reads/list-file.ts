import 'server-only';
import { parse, type Options } from 'csv-parse';
import { withoutGuard } from '@/lib/files/rules/csv';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { LengthSystem } from '@/lib/units/rules';
import { readHeading, type HeadingRefusal, type ListHeading } from '../rules/list-columns';
import { listBytesMost, listRowsMost, type ListFileRefusal } from '../rules/list-refusals';
import { rowReader, type ReadRow } from '../rules/list-row';

/** A stock list, read: its lines, and the headings that were passed over. */
export type ReadList = { rows: ReadRow[]; passedOver: readonly string[] };

/**
 * Reads the bytes of a stock list: RFC 4180, UTF-8 with a byte order mark or without, any line
 * ends, cells in quotation marks over several lines; semicolons or tabs where the heading has them.
 * The apostrophe that guards a formula is taken off.
 *
 * @param system what a length without a unit means
 * @returns refuses, in this order: too large, empty, a spreadsheet, no text, not UTF-8, not CSV,
 *   what {@link readHeading} refuses, no piece under the heading, too many lines
 */
export async function readListFile(
  bytes: Uint8Array,
  system: LengthSystem,
): Promise<Result<ReadList, ListFileRefusal>> {
  const text = textOf(bytes);
  if (!text.ok) return text;
  const list = await readLines(text.value, system);
  if (!list.ok) return list;
  if (list.value.rows.length === 0) return refuse({ code: 'no_pieces' });
  if (list.value.rows.length > listRowsMost) {
    return refuse({ code: 'too_many_lines', most: listRowsMost });
  }
  return list;
}

function textOf(bytes: Uint8Array): Result<string, ListFileRefusal> {
  if (bytes.byteLength > listBytesMost) {
    return refuse({ code: 'file_too_large', bytesMost: listBytesMost });
  }
  const head = Buffer.from(bytes.subarray(0, 4)).toString('latin1');
  if (head.startsWith('PK\u0003\u0004') || head.startsWith('\u00d0\u00cf\u0011\u00e0')) {
    return refuse({ code: 'spreadsheet_file' });
  }
  if (head.startsWith('\u00ff\u00fe') || head.startsWith('\u00fe\u00ff')) {
    return refuse({ code: 'not_utf8' });
  }
  if (bytes.includes(0)) return refuse({ code: 'not_text' });
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const text = buffer.toString('utf8').replace(/^\ufeff/, '');
  // What is not UTF-8 was replaced; a file may hold that sign itself, so the bytes are compared.
  if (text.includes('\ufffd') && !isUtf8(buffer)) return refuse({ code: 'not_utf8' });
  return text.trim() === '' ? refuse({ code: 'empty_file' }) : ok(text);
}

function isUtf8(buffer: Buffer): boolean {
  return Buffer.from(buffer.toString('utf8'), 'utf8').equals(buffer);
}

type Reading = {
  heading: Result<ListHeading, HeadingRefusal> | null;
  readRow: ReturnType<typeof rowReader> | null;
  rows: ReadRow[];
  linesBefore: number;
};

function readLines(text: string, system: LengthSystem): Promise<Result<ReadList, ListFileRefusal>> {
  const reading: Reading = { heading: null, readRow: null, rows: [], linesBefore: 0 };
  const take = (cells: string[], endsAtLine: number) => {
    const line = reading.linesBefore + 1;
    reading.linesBefore = endsAtLine;
    if (cells.every((cell) => cell.trim() === '')) return;
    if (!reading.heading) {
      reading.heading = readHeading(cells);
      if (reading.heading.ok) reading.readRow = rowReader(reading.heading.value, system);
    } else if (reading.readRow && reading.rows.length <= listRowsMost) {
      reading.rows.push(reading.readRow(cells.map(withoutGuard), line));
    }
  };
  return new Promise((resolve) => {
    // One kind of line end, so that lines are counted as an editor counts them.
    parse(text.replace(/\r\n?/g, '\n'), optionsFor(text, take), (error) => {
      const line = reading.linesBefore + 1;
      resolve(error ? refuse({ code: 'not_csv', line }) : listFrom(reading));
    });
  });
}

function listFrom({ heading, rows }: Reading): Result<ReadList, ListFileRefusal> {
  if (!heading) return refuse({ code: 'empty_file' });
  return heading.ok ? ok({ rows, passedOver: heading.value.passedOver }) : heading;
}

function optionsFor(text: string, take: (cells: string[], endsAtLine: number) => void): Options {
  return {
    delimiter: delimiterOf(text),
    record_delimiter: ['\n'],
    relax_column_count: true,
    on_record: (cells: unknown, { lines }) => {
      take(cells as string[], lines);
      return null;
    },
  };
}

function delimiterOf(text: string): string {
  const heading = /^\s*([^\r\n]*)/.exec(text)?.[1] ?? '';
  const found = [',', ';', '\t'].map((sign) => ({ sign, times: heading.split(sign).length }));
  return found.reduce((best, each) => (each.times > best.times ? each : best)).sign;
}
