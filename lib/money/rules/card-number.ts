const leastDigits = 13;
const mostDigits = 19;

/**
 * Whether a text holds what looks like the number of a payment card, which is never kept.
 *
 * It does when 13 to 19 digits together, with or without spaces, hyphens or points between them,
 * begin as a card's number begins and end in a check digit that fits.
 *
 * @source ISO/IEC 7812-1 (the check digit known as Luhn's); first digits as is common practice
 * @example looksLikeCardNumber('paid 4111-1111-1111-1111') // true; a terminal's 000482 is not
 */
export function looksLikeCardNumber(text: string): boolean {
  const runs = text.match(/\d+(?:[ .-]?\d+)*/g) ?? [];
  return runs.some((run) => stretchesOf(run.split(/[ .-]/)).some(isCardNumber));
}

/** Every stretch of whole groups: a card's number may stand among other figures. */
function stretchesOf(groups: readonly string[]): string[] {
  return groups.flatMap((_group, from) =>
    groups.slice(from).map((_last, more) => groups.slice(from, from + more + 1).join('')),
  );
}

function isCardNumber(digits: string): boolean {
  if (digits.length < leastDigits || digits.length > mostDigits) return false;
  return /^(?:2[2-7]|3[04-9]|4|5|6)/.test(digits) && endsInItsCheckDigit(digits);
}

/**
 * Whether the last digit is the check digit of those before it: every other digit from the right
 * counts twice, two figures are added together, and the sum is a full ten.
 *
 * @source ISO/IEC 7812-1, annex B
 * @example endsInItsCheckDigit('79927398713') // true; '79927398710' is not
 */
export function endsInItsCheckDigit(digits: string): boolean {
  const sum = Array.from(digits)
    .reverse()
    .map((digit, place) => Number(digit) * (place % 2 === 0 ? 1 : 2))
    .reduce((total, product) => total + (product > 9 ? product - 9 : product), 0);
  return sum % 10 === 0;
}
