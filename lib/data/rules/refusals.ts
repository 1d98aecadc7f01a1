import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';

/** The largest file that is taken, in bytes: 25 MB. */
export const fileBytesMost = 25_000_000;
/** The most lines that are taken at once. */
export const fileLinesMost = 100_000;

/** Why a file could not be read. */
export type FileRefusal =
  | { code: 'file_too_large' }
  | { code: 'empty_file' }
  | { code: 'spreadsheet_file' }
  | { code: 'not_text' }
  | { code: 'not_utf8' }
  | { code: 'not_csv'; line: number }
  | { code: 'column_twice'; column: string }
  | { code: 'column_missing'; column: string }
  | { code: 'no_lines' }
  | { code: 'too_many_lines' };

/** Why a file was not looked at, not brought in or not stopped. */
export type DataRefusal =
  | FileRefusal
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_load' }
  | { code: 'things_changed' }
  | { code: 'lines_refused'; lines: number }
  | { code: 'nothing_to_do' }
  | { code: 'stopped' }
  | { code: 'ended_before' };

/** Says in a full sentence why a file could not be read, and what helps. */
export function fileRefusalMessage(refusal: FileRefusal): string {
  switch (refusal.code) {
    case 'file_too_large':
      return `The file is too large: ${fileBytesMost / 1_000_000} MB is the most.`;
    case 'empty_file':
      return 'The file is empty. Was it saved before it was closed?';
    case 'spreadsheet_file':
      return 'This is a spreadsheet, not a CSV. In the spreadsheet, save the sheet as CSV UTF-8.';
    case 'not_text':
      return 'This is no text. Save the sheet as CSV and bring that in.';
    case 'not_utf8':
      return 'The letters of this file cannot be read. Save it again as CSV UTF-8.';
    case 'not_csv':
      return `This does not read as CSV: a quotation mark near line ${refusal.line} has no partner.`;
    case 'column_twice':
      return `The column “${refusal.column}” stands in the heading twice. Keep one of them.`;
    case 'column_missing':
      return `The first line must name the columns, and one of them must be “${refusal.column}”.`;
    case 'no_lines':
      return 'There is a heading, but nothing under it.';
    case 'too_many_lines':
      return `More than ${fileLinesMost.toLocaleString('en-US')} lines at once are too many.`;
  }
}

type CommandRefusal = Exclude<DataRefusal, FileRefusal>;

const commandCodes: Readonly<Record<CommandRefusal['code'], true>> = {
  not_allowed: true,
  key_used_for_something_else: true,
  unknown_load: true,
  things_changed: true,
  lines_refused: true,
  nothing_to_do: true,
  stopped: true,
  ended_before: true,
};

function isAboutCommand(refusal: DataRefusal): refusal is CommandRefusal {
  return refusal.code in commandCodes;
}

/** Says in a full sentence why a file was not looked at, not brought in or not stopped. */
export function dataRefusalMessage(refusal: DataRefusal): string {
  return isAboutCommand(refusal) ? commandMessage(refusal) : fileRefusalMessage(refusal);
}

function commandMessage(refusal: CommandRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_load':
      return 'There is no such file here. Bring it in again.';
    case 'things_changed':
      return 'Something changed while you were looking; look at the file once more.';
    case 'lines_refused':
      return linesRefusedSentence(refusal.lines);
    case 'nothing_to_do':
      return 'Nothing in this file is new or changed, so there is nothing to bring in.';
    case 'stopped':
      return 'It was stopped; nothing was kept.';
    case 'ended_before':
      return 'It has ended already.';
  }
}

function linesRefusedSentence(lines: number): string {
  const them = lines === 1 ? 'One line was refused' : `${lines} lines were refused`;
  return `${them}. Put the file right and bring it in again, or tick that they are left out.`;
}
