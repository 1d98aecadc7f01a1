import { expect, test } from 'vitest';
import {
  accountSettledEntry,
  decideSettlement,
  owedForSale,
  settlementRefusalMessage,
  type SettlementRefusal,
} from '@/lib/sales/rules/settling';

const account = {
  ...{ onAccountCents: 30_000n, takenOffCents: 5_000n, settledCents: 10_000n },
  ...{ soldOn: '2026-11-01' as const, collectorId: 'shop' },
};
const money = {
  ...{ amountCents: 15_000n, kind: 'cheque' as const, reference: '4471' },
  receivedOn: '2026-11-20' as const,
};
const today = '2026-11-25';

test('what is owed is what was left open, less what came back and what came in', () => {
  expect(owedForSale(account)).toBe(15_000n);
  expect(decideSettlement(account, money, today)).toEqual({
    ok: true,
    value: { stillOwedCents: 0n },
  });
});

const rows: Record<
  Exclude<SettlementRefusal['code'], 'unknown_sale'>,
  Parameters<typeof decideSettlement>
> = {
  nothing_owed: [{ ...account, settledCents: 25_000n }, money, today],
  more_than_owed: [account, { ...money, amountCents: 15_001n, receivedOn: '2026-10-01' }, today],
  before_the_sale: [account, { ...money, receivedOn: '2026-10-31' }, today],
  not_yet: [account, { ...money, receivedOn: '2026-11-26', reference: '4111111111111111' }, today],
  card_number_typed: [account, { ...money, reference: '4111 1111 1111 1111' }, today],
};

test.each(Object.entries(rows))('refuses %s, before what comes after it', (code, asked) => {
  const decided = decideSettlement(...asked);
  expect(decided).toMatchObject({ ok: false, refusal: { code } });
  if (!decided.ok) expect(settlementRefusalMessage(decided.refusal)).toMatch(/[.]$/);
});

test('the money is here, and so much less is owed by the same one', () => {
  expect(accountSettledEntry(money, 'shop')).toEqual([
    { account: '1020', amountCents: 15_000n },
    { account: '1100', amountCents: -15_000n, collectorId: 'shop' },
  ]);
});
