import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import type { HeadingRefusal } from './list-columns';

/** The largest stock list that is taken, in bytes: 25 MB. */
export const listBytesMost = 25_000_000;
/** The most lines that are taken at once. */
export const listRowsMost = 100_000;

/** Why a file could not be read as a stock list. */
export type ListFileRefusal =
  | { code: 'no_file' }
  | { code: 'file_too_large'; bytesMost: number }
  | { code: 'empty_file' }
  | { code: 'spreadsheet_file' }
  | { code: 'not_text' }
  | { code: 'not_utf8' }
  | { code: 'not_csv'; line: number }
  | HeadingRefusal
  | { code: 'no_pieces' }
  | { code: 'too_many_lines'; most: number };

/** Says in a full sentence why a file could not be read, and what to do about it. */
export function listFileRefusalMessage(refusal: ListFileRefusal): string {
  switch (refusal.code) {
    case 'no_file':
      return 'Choose the file with your stock list first.';
    case 'file_too_large':
      return `The file is too large: ${refusal.bytesMost / 1_000_000} MB is the most.`;
    case 'empty_file':
      return 'The file is empty. Was the list saved before it was closed?';
    case 'spreadsheet_file':
      return 'This is a spreadsheet, not a CSV. In the spreadsheet, save the sheet as CSV UTF-8.';
    case 'not_text':
      return 'This is not a stock list: it is no text. Save your list as CSV and bring that in.';
    case 'not_utf8':
      return 'The letters of this file cannot be read. Save the list again as CSV UTF-8.';
    case 'not_csv':
      return `This does not read as CSV: a quotation mark near line ${refusal.line} has no partner.`;
    case 'column_twice':
      return `The column for the ${refusal.column} stands in the heading twice. Keep one of them.`;
    case 'no_code_column':
      return noCodeSentence(refusal.found);
    case 'no_pieces':
      return 'There is a heading, but no piece under it.';
    case 'too_many_lines':
      return `More than ${refusal.most.toLocaleString('en-US')} lines at once are too many.`;
  }
}

function noCodeSentence(found: readonly string[]): string {
  const said = found.filter((heading) => heading !== '').slice(0, 6);
  return (
    'The first line must name the columns, and one of them must be "code", the SKU on the tag. ' +
    `It says: ${said.join(', ') || 'nothing'}.`
  );
}

type ListCommandRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_list' }
  | { code: 'confirmed_before' }
  | { code: 'stock_changed' }
  | { code: 'lines_refused'; lines: number }
  | { code: 'nothing_to_do' }
  | { code: 'stopped' };

/** Why a stock list was not looked at or not confirmed. */
export type StockListRefusal = ListFileRefusal | ListCommandRefusal;

/** Says in a full sentence why a stock list was not looked at or not confirmed. */
export function stockListRefusalMessage(refusal: StockListRefusal): string {
  return isAboutCommand(refusal) ? commandMessage(refusal) : listFileRefusalMessage(refusal);
}

const commandCodes: Readonly<Record<ListCommandRefusal['code'], true>> = {
  not_allowed: true,
  key_used_for_something_else: true,
  unknown_list: true,
  confirmed_before: true,
  stock_changed: true,
  lines_refused: true,
  nothing_to_do: true,
  stopped: true,
};

function isAboutCommand(refusal: StockListRefusal): refusal is ListCommandRefusal {
  return refusal.code in commandCodes;
}

function commandMessage(refusal: ListCommandRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_list':
      return 'There is no such list. Bring the file in again.';
    case 'confirmed_before':
      return 'This list was brought in already.';
    case 'stock_changed':
      return 'The stock changed while you were looking; look once more.';
    case 'lines_refused':
      return linesRefusedSentence(refusal.lines);
    case 'nothing_to_do':
      return 'Nothing in this list is new or changed, so there is nothing to bring in.';
    case 'stopped':
      return 'It was stopped; nothing was kept.';
  }
}

function linesRefusedSentence(lines: number): string {
  const them = lines === 1 ? 'One line was refused' : `${lines} lines were refused`;
  return `${them}. Put the file right and bring it in again, or tick that they are left out.`;
}
