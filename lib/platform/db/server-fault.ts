import 'server-only';

/**
 * A start that cannot go on, told in one sentence that a person can act on.
 *
 * The launcher prints the sentence alone, without a trace; nothing has been lost.
 */
export class StartFault extends Error {
  override readonly name = 'StartFault';
}

const sentences: Readonly<Record<string, string>> = {
  ENOSPC: 'There is no room left on the disk. Make some room, then start again.',
  EDQUOT: 'There is no room left on the disk for this account. Make some room, then start again.',
  ENOENT: 'The data folder cannot be made at that place. Choose another DATA_DIR.',
  ENOTDIR: 'DATA_DIR is a folder; a part of its path is a file.',
  EROFS: 'The data folder is on a disk that cannot be written to.',
};

/**
 * Turns what went wrong into a sentence, if it is one of the things that happen to a machine.
 *
 * Knows a full disk (from Node and from PostgreSQL's own words) and a folder that may not be
 * written. Anything else is a bug and stays what it is.
 */
export function asStartFault(error: unknown): unknown {
  if (error instanceof StartFault || !(error instanceof Error)) return error;
  const code = codeOf(error);
  const path = 'path' in error && typeof error.path === 'string' ? error.path : 'the data folder';
  if (code === 'EACCES' || code === 'EPERM') {
    return new StartFault(`${path} cannot be written by this account. Choose another DATA_DIR.`);
  }
  const sentence = code === undefined ? undefined : sentences[code];
  if (sentence !== undefined) return new StartFault(sentence);
  return mentionsFullDisk(error.message) ? new StartFault(sentences['ENOSPC']) : error;
}

/** True when a program's own words say that the disk is full. */
export function mentionsFullDisk(words: string): boolean {
  return /no space left on device|ENOSPC|disk quota exceeded/i.test(words);
}

/** The code of a Node or PostgreSQL error ('ECONNREFUSED', '28P01'), or undefined. */
export function codeOf(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}
