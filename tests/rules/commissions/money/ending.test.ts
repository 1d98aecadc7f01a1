import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import {
  endEntry,
  endStageOf,
  feeByAgreement,
  refundEntry,
  settleEnd,
  type CancelTerms,
  type EndStage,
} from '@/lib/commissions/rules/money/ending';
import { clauseSentence, piecesSentence } from '@/lib/commissions/rules/money/end-words';
import { accounts, entryBalances } from '@/lib/ledger/rules';
import { formatCents } from '@/lib/money/rules';
import { aJob, agreement, beforeClay, finished, someFacts } from '../some-facts';

const terms: CancelTerms = {
  designFeeCents: 80_000n,
  cancelMakingPercent: '50',
  cancelFinishedPercent: '100',
};
const price = 1_000_000n;

describe('how far it was', () => {
  test.each<[string, Partial<CommissionFacts>, EndStage]>([
    ['nothing made', beforeClay, 'before_making'],
    ['a job that was opened and not begun', { jobs: [aJob(0)] }, 'before_making'],
    ['one part begun', { jobs: [aJob(1)] }, 'making'],
    ['one job finished, one not', { jobs: [aJob(finished), aJob(2)] }, 'making'],
    ['one job finished, one not begun', { jobs: [aJob(finished), aJob(0)] }, 'making'],
    ['all of it finished', { jobs: [aJob(finished)] }, 'finished'],
  ])('%s', (_label, facts, stage) => {
    expect(endStageOf(someFacts(facts))).toBe(stage);
  });
});

describe('what stays by the agreement', () => {
  test.each<[string, EndStage, CancelTerms | null, bigint, bigint]>([
    ['before the making, the design fee', 'before_making', terms, price, 80_000n],
    ['while it is made, the share', 'making', terms, price, 500_000n],
    ['of an odd price, half a cent goes up', 'making', terms, 1_000_001n, 500_001n],
    ['a share below the design fee: the fee', 'making', terms, 100_000n, 80_000n],
    ['finished, the whole', 'finished', terms, price, price],
    ['nothing agreed, nothing', 'finished', null, price, 0n],
  ])('%s', (_label, ...[stage, said, priceCents, expected]) => {
    expect(feeByAgreement(stage, said, priceCents)).toBe(expected);
  });
});

describe('a settlement', () => {
  const making = someFacts({ agreement, jobs: [aJob(2)] });
  test.each<[string, bigint, bigint | null, [bigint, bigint, bigint, bigint]]>([
    ['paid more than stays: the rest goes back', 541_250n, null, [500_000n, 500_000n, 41_250n, 0n]],
    ['paid less than stays: the rest is owed', 300_000n, null, [500_000n, 300_000n, 0n, 200_000n]],
    ['paid just that', 500_000n, null, [500_000n, 500_000n, 0n, 0n]],
    ['nothing paid', 0n, null, [500_000n, 0n, 0n, 500_000n]],
    ['the owner says another amount', 541_250n, 10_000n, [10_000n, 10_000n, 531_250n, 0n]],
    ['the owner keeps nothing', 541_250n, 0n, [0n, 0n, 541_250n, 0n]],
  ])('%s', (_label, paidCents, own, [feeCents, keptCents, backCents, stillOwedCents]) => {
    expect(settleEnd(making, terms, paidCents, own)).toEqual({
      ...{ stage: 'making', feeCents, keptCents, backCents, stillOwedCents },
    });
  });
  test('the price is that with its signed changes', () => {
    const changed = { ...agreement, priceCents: 1_200_000n };
    const facts = someFacts({ agreement: changed, jobs: [aJob(2)] });
    expect(settleEnd(facts, terms, 0n, null).feeCents).toBe(600_000n);
    expect(settleEnd(someFacts(), null, 0n, null).feeCents).toBe(0n);
  });
  test('every cent that was paid is kept or goes back, every cent that stays is paid or owed', () => {
    const cents = fc.bigInt({ min: 0n, max: 2_000_000n });
    fc.assert(
      fc.property(cents, fc.option(cents), (paidCents, own) => {
        const settled = settleEnd(making, terms, paidCents, own);
        expect(settled.keptCents + settled.backCents).toBe(paidCents);
        expect(settled.keptCents + settled.stillOwedCents).toBe(settled.feeCents);
        expect(settled.backCents === 0n || settled.stillOwedCents === 0n).toBe(true);
        const entry = endEntry(settled, { commissionId: 'c', collectorId: 'm' });
        expect(entry.length === 0 || entryBalances(entry)).toBe(true);
      }),
    );
  });
});

describe('the books of an end', () => {
  const whose = { commissionId: 'c', collectorId: 'm' };
  const making = someFacts({ agreement, jobs: [aJob(2)] });
  test('what stays is income of its own kind, and what is not paid of it is owed', () => {
    expect(endEntry(settleEnd(making, terms, 300_000n, null), whose)).toEqual([
      { account: accounts.deposits, amountCents: 300_000n, commissionId: 'c' },
      { account: accounts.owedByCollectors, amountCents: 200_000n, ...whose },
      { account: accounts.depositsKept, amountCents: -500_000n },
    ]);
    expect(endEntry(settleEnd(making, terms, 600_000n, 0n), whose)).toEqual([]);
  });
  test('what goes back makes the debt less, and the money', () => {
    const back = { moneyAccount: accounts.bank, amountCents: 100n, commissionId: 'c' };
    expect(refundEntry(back)).toEqual([
      { account: accounts.deposits, amountCents: 100n, commissionId: 'c' },
      { account: accounts.bank, amountCents: -100n },
    ]);
  });
});

describe('the words of an end', () => {
  const money = (cents: bigint) => formatCents(cents);
  test.each<[EndStage, CancelTerms, string]>([
    ['before_making', terms, 'Before the making the design fee of $800.00 stays.'],
    [
      'before_making',
      { ...terms, designFeeCents: 0n },
      'Before the making nothing stays: no design fee was agreed.',
    ],
    [
      'making',
      { ...terms, cancelMakingPercent: '33.50' },
      'While it is made, 33.5 % of the price with its signed changes stays, and never less than the design fee of $800.00.',
    ],
    ['finished', terms, 'Once it is finished, 100 % of the price with its signed changes stays.'],
    [
      'finished',
      { ...terms, cancelFinishedPercent: '80', designFeeCents: 0n },
      'Once it is finished, 80 % of the price with its signed changes stays.',
    ],
  ])('%s', (stage, said, sentence) => {
    expect(clauseSentence(stage, said, money)).toBe(sentence);
  });
  test('the pieces are told by where they stand', () => {
    expect(piecesSentence(aJob(0))).toBe('Job 7, 4 pieces: 4 not begun.');
    expect(piecesSentence(aJob(finished))).toBe('Job 7, 4 pieces: 4 finished.');
    expect(piecesSentence({ ...aJob(1), pieces: 5 })).toMatch(
      /^Job 7, 5 pieces: 1 not begun, 4 at /,
    );
  });
});
