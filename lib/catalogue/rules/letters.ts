/**
 * Whether a text typed in haste may mean this title: each word of it begins a word of the title,
 * or is one slip away from it (a letter wrong, missing, too many, or two swapped); from seven
 * letters on, two slips. Words of three letters and fewer must be right.
 *
 * @source common practice, no published source: what a hurried hand gets wrong
 * @example mayMeanTitle('shaols tren', 'Tern over shoals') // true
 */
export function mayMeanTitle(typed: string, title: string): boolean {
  const titleWords = wordsOf(title);
  const typedWords = wordsOf(typed);
  return (
    typedWords.length > 0 &&
    typedWords.every((typedWord) => titleWords.some((word) => mayMeanWord(typedWord, word)))
  );
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}

function mayMeanWord(typed: string, word: string): boolean {
  if (word.startsWith(typed)) return true;
  const most = slipsAllowed(typed.length);
  if (most === 0) return false;
  const starts = [word, ...[-1, 0, 1].map((more) => word.slice(0, typed.length + more))];
  return starts.some((start) => slipsBetween(typed, start) <= most);
}

function slipsAllowed(letters: number): number {
  if (letters <= 3) return 0;
  return letters < 7 ? 1 : 2;
}

/**
 * How many slips turn one word into the other: a letter wrong, missing, too many, or two
 * neighbours swapped, each counted once.
 *
 * @source optimal string alignment, a restricted Damerau–Levenshtein distance, from memory
 * @example slipsBetween('tren', 'tern') // 1
 */
export function slipsBetween(first: string, second: string): number {
  let before: number[] = [];
  let row = Array.from({ length: second.length + 1 }, (_, at) => at);
  for (let i = 1; i <= first.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= second.length; j += 1) {
      const wrong = first[i - 1] === second[j - 1] ? 0 : 1;
      const isSwap =
        i > 1 && j > 1 && first[i - 1] === second[j - 2] && first[i - 2] === second[j - 1];
      next[j] = Math.min(
        at(row, j) + 1,
        at(next, j - 1) + 1,
        at(row, j - 1) + wrong,
        isSwap ? at(before, j - 2) + 1 : Infinity,
      );
    }
    before = row;
    row = next;
  }
  return at(row, second.length);
}

function at(row: readonly number[], place: number): number {
  return row[place] ?? Infinity;
}
