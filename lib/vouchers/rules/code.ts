import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';

/**
 * The signs of a voucher's number: none that looks like another when it is read aloud or written
 * by hand. There are 23 of them, a prime, so that the check sign finds every slip of one sign and
 * every two that changed places.
 */
export const codeSigns = '234679ACDEFHJKMNPQRTVWX';

const drawnSigns = 11;
const groupLength = 4;

/**
 * A new number: eleven signs drawn by chance and one that checks them, in three groups.
 *
 * @param draw a whole number from zero to below what it is given, each as likely as the others
 * @example makeCode(() => 0) // '2222-2222-2222': the check sign of nothing but first signs
 */
export function makeCode(draw: (below: number) => number): string {
  const drawn = Array.from({ length: drawnSigns }, () => {
    const sign = codeSigns[draw(codeSigns.length)];
    invariant(sign, 'What is drawn is one of the signs.');
    return sign;
  }).join('');
  return grouped(drawn + checkSign(drawn));
}

/** Why what was typed is no voucher's number. */
export type CodeRefusal = { code: 'no_code' } | { code: 'not_a_code' } | { code: 'misread' };

/**
 * Reads a voucher's number as it is typed or scanned, with or without its hyphens.
 *
 * @returns the number as it is kept; refuses, in this order: nothing typed, something that is no
 *   such number, a number whose check sign does not fit
 * @example readCode('2222 2222 2222') // '2222-2222-2222'
 */
export function readCode(text: string): Result<string, CodeRefusal> {
  const signs = text.toUpperCase().replaceAll(/[\s-]/g, '');
  if (signs === '') return refuse({ code: 'no_code' });
  const isCode =
    signs.length === drawnSigns + 1 && Array.from(signs).every((sign) => codeSigns.includes(sign));
  if (!isCode) return refuse({ code: 'not_a_code' });
  const fits = checkSign(signs.slice(0, drawnSigns)) === signs.at(-1);
  return fits ? ok(grouped(signs)) : refuse({ code: 'misread' });
}

/** Says in a full sentence what is wrong with a voucher's number. */
export function codeRefusalMessage(refusal: CodeRefusal): string {
  switch (refusal.code) {
    case 'no_code':
      return 'Scan the voucher, or write its number: twelve signs in three groups.';
    case 'not_a_code':
      return 'A voucher’s number has twelve signs in three groups, such as 4H7K-9QTM-2RXC.';
    case 'misread':
      return 'That number was misread: one sign of it does not fit the others. Look once more.';
  }
}

/** Weights that all differ: a sign that changed, or two that changed places, change the sum. */
function checkSign(drawn: string): string {
  const sum = Array.from(drawn).reduce(
    (total, sign, place) => total + codeSigns.indexOf(sign) * (place + 2),
    0,
  );
  const sign = codeSigns[sum % codeSigns.length];
  invariant(sign, 'Every rest has its sign.');
  return sign;
}

function grouped(signs: string): string {
  return (signs.match(new RegExp(`.{${groupLength}}`, 'g')) ?? []).join('-');
}
