import { describe, expect, test } from 'vitest';
import {
  accountOfMoney,
  accounts,
  depositEntry,
  entryBalances,
  inColumns,
  settlementEntry,
  type MoneyKind,
} from '@/lib/ledger/rules';
import { saleEntry } from '@/lib/ledger/rules/sale-entry';

const kinds = Object.keys(accountOfMoney) as MoneyKind[];

describe('a sale in the books', () => {
  test('pieces and tax against what was paid, each authority by itself', () => {
    const postings = saleEntry({
      lines: [
        { kind: 'piece', netCents: 18_000n },
        { kind: 'piece', netCents: 9_600n },
      ],
      taxes: [
        { authority: 'State', taxCents: 1_794n },
        { authority: 'Cedar Landing', taxCents: 414n },
      ],
      tenders: [
        { kind: 'card', amountCents: 20_000n },
        { kind: 'cash', amountCents: 9_808n },
      ],
    });
    expect(postings).toEqual([
      { account: accounts.cardClearing, amountCents: 20_000n },
      { account: accounts.cashDrawer, amountCents: 9_808n },
      { account: accounts.salesOfPieces, amountCents: -27_600n },
      { account: accounts.taxHeld, amountCents: -1_794n, authority: 'State' },
      { account: accounts.taxHeld, amountCents: -414n, authority: 'Cedar Landing' },
    ]);
    expect(entryBalances(postings)).toBe(true);
  });

  test('tax of nothing is left out', () => {
    const postings = saleEntry({
      lines: [{ kind: 'piece', netCents: 500n }],
      taxes: [{ authority: 'State', taxCents: 0n }],
      tenders: [{ kind: 'cash', amountCents: 500n }],
    });
    expect(postings).toHaveLength(2);
    expect(entryBalances(postings)).toBe(true);
  });

  test('a hand-over uses up the deposit, and the rest is owed, both under the commission', () => {
    const postings = saleEntry({
      lines: [{ kind: 'commission', netCents: 1_000_000n }],
      taxes: [{ authority: 'State', taxCents: 80_000n }],
      tenders: [
        { kind: 'deposit', amountCents: 540_000n },
        { kind: 'on_account', amountCents: 540_000n },
      ],
      commissionId: 'tidewater',
    });
    expect(postings).toEqual([
      { account: accounts.deposits, amountCents: 540_000n, commissionId: 'tidewater' },
      { account: accounts.owedByCollectors, amountCents: 540_000n, commissionId: 'tidewater' },
      { account: accounts.commissionsHandedOver, amountCents: -1_000_000n },
      { account: accounts.taxHeld, amountCents: -80_000n, authority: 'State' },
    ]);
  });
});

describe('money for a commission', () => {
  test.each(kinds)('%s before the hand-over is a debt, after it less is owed', (kind) => {
    const payment = { kind, amountCents: 250_000n, commissionId: 'tidewater' };
    const moneyIn = { account: accountOfMoney[kind], amountCents: 250_000n };
    const answer = { amountCents: -250_000n, commissionId: 'tidewater' };
    expect(depositEntry(payment)).toEqual([moneyIn, { account: accounts.deposits, ...answer }]);
    expect(settlementEntry(payment)).toEqual([
      moneyIn,
      { account: accounts.owedByCollectors, ...answer },
    ]);
  });
});

describe('an entry can stand', () => {
  const line = (amountCents: bigint) => ({ account: accounts.bank, amountCents });
  test.each([
    ['two that answer each other', [5n, -5n], true],
    ['three that answer each other', [5n, -2n, -3n], true],
    ['a cent over', [5n, -4n], false],
    ['one alone', [5n], false],
    ['a posting of nothing', [5n, -5n, 0n], false],
    ['nothing', [], false],
  ])('%s', (_label, amounts, stands) => {
    expect(entryBalances(amounts.map(line))).toBe(stands);
  });
});

test('an amount stands in one column only', () => {
  expect(inColumns(500n)).toEqual({ debitCents: 500n, creditCents: null });
  expect(inColumns(-500n)).toEqual({ debitCents: null, creditCents: 500n });
  expect(inColumns(0n)).toEqual({ debitCents: 0n, creditCents: null });
});
