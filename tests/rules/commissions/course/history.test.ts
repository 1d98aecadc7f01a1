import { expect, test } from 'vitest';
import { historySentence, withoutNames } from '@/lib/commissions/rules/course/history';

test.each([
  ['wrote to Marit Oland', { subject: 'Dear Marit' }, 'Ines Vale wrote to them.'],
  ['opened their page to Marit Oland', {}, 'Ines Vale opened their page.'],
  ['withdrew the address of Marit', {}, 'Ines Vale withdrew an address of their page.'],
  [
    'took a payment',
    { amountCents: '12500', paidBy: 'Marit Oland', why: 'Marit says so' },
    'Ines Vale took a payment: $125.00.',
  ],
])('of one who was struck out “%s” is told without a name', (did, facts, told) => {
  const fact = withoutNames({ who: 'Ines Vale', did, facts });
  expect(historySentence(fact, { seesMoney: true, currency: 'USD' })).toBe(told);
});
