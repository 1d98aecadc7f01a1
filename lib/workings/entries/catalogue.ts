import { z } from 'zod';
import { checkDigit, digitsBeforeCheck, weightedSum } from '@/lib/catalogue/rules';
import { keys } from '@/lib/workings/atoms';
import { listed, workedValue, type Working } from '@/lib/workings/working';

const lengths = listed(digitsBeforeCheck.map(String), 'or');
const digitsMust = `must be ${lengths} digits in quotes, without the check digit`;
const checkDigitInput = keys({
  digits: z.string(digitsMust).refine((digits) => checkDigit(digits).ok, digitsMust),
});

/** The last digit of a printed code, by which a scanner notices a wrong one. */
export const checkDigitWorking: Working<z.infer<typeof checkDigitInput>, { checkDigit: number }> = {
  name: 'check-digit',
  title: 'The check digit of a printed code',
  formula:
    'From the right, the digits count three times and once in turn; the check digit fills the ' +
    'sum up to the next full ten.',
  source: 'GS1 General Specifications, check digit of modulo 10',
  caution: null,
  example: { digits: '629104150021' },
  input: checkDigitInput,
  workOut: ({ digits }) => {
    const digit = workedValue(checkDigit(digits));
    const sum = weightedSum(digits);
    return {
      output: { checkDigit: digit },
      working: [
        `From the right, the digits of ${digits} count 3, 1, 3, 1 and so on: ${sum} in all.`,
        `From ${sum} up to the next full ten, ${sum + digit}, is ${digit}.`,
      ],
    };
  },
};
