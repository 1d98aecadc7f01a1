import { describe, expect, test } from 'vitest';
import type { Actor } from '@/lib/access/rules';
import { actsOpen, type Act } from '@/lib/commissions/rules/acts';
import { placeCautions, weightEstimate } from '@/lib/commissions/rules/enquiry/cautions';
import { historySentence } from '@/lib/commissions/rules/course/history';
import {
  commissionRefusalMessage,
  type CommissionRefusal,
  type GeneralRefusalFacts,
} from '@/lib/commissions/rules/refusals';
import { nextLetter } from '@/lib/commissions/rules/words';
import { aJob, agreement, beforeClay, finished, someFacts } from './some-facts';

const on = '2026-05-12' as const;

/** One refusal of each kind: a new one without a row does not compile. */
const refusals: { [Code in keyof GeneralRefusalFacts]: CommissionRefusal<Code> } = {
  unknown_commission: { code: 'unknown_commission' },
  drawing_not_kept: { code: 'drawing_not_kept' },
  unknown_collector: { code: 'unknown_collector' },
  ended_early: { code: 'ended_early', endedOn: on },
  handed_over_already: { code: 'handed_over_already', handedOn: on },
  day_to_come: { code: 'day_to_come', on },
  picture_not_kept: { code: 'picture_not_kept', picture: { code: 'not_a_picture' } },
  not_agreed_yet: { code: 'not_agreed_yet' },
  unknown_tax_place: { code: 'unknown_tax_place' },
  deposit_above_total: { code: 'deposit_above_total', depositCents: 2n, totalCents: 1n },
  agreed_below_paid: { code: 'agreed_below_paid', totalCents: 1n, paidCents: 2n },
  nothing_shown: { code: 'nothing_shown' },
  other_picture: { code: 'other_picture' },
  approved_already: { code: 'approved_already', approvedBy: 'Marit Oland', approvedOn: on },
  before_it_was_shown: { code: 'before_it_was_shown', shownOn: on },
  due_before_asked: { code: 'due_before_asked', askedOn: on },
  more_than_to_ask: { code: 'more_than_to_ask', leftCents: 0n },
  more_than_owed: { code: 'more_than_owed', owedCents: 580_000n },
  unknown_instalment: { code: 'unknown_instalment' },
  card_number_in_reference: { code: 'card_number_in_reference' },
  may_begin_already: { code: 'may_begin_already' },
  let_begin_already: { code: 'let_begin_already' },
  job_not_finished: { code: 'job_not_finished', jobNumber: 7 },
  older_than_last_payment: { code: 'older_than_last_payment', receivedOn: on },
  no_tax_rate_for_site: { code: 'no_tax_rate_for_site', place: 'Outer Skerry', on },
  paid_above_total: { code: 'paid_above_total', paidCents: 2n, totalCents: 1n },
};

describe('every refusal is told in full sentences', () => {
  test.each(Object.entries(refusals))('%s', (code, refusal) => {
    const sentence = commissionRefusalMessage(refusal);
    expect(sentence).toMatch(/^[A-Z$].*\.$/);
    expect(sentence).not.toContain(code);
    expect(sentence).not.toMatch(/undefined|error|invalid/i);
  });
  test('with the facts that explain it', () => {
    expect(commissionRefusalMessage(refusals.approved_already)).toBe(
      'Marit Oland already said yes to it, on 12 May 2026.',
    );
    expect(commissionRefusalMessage(refusals.more_than_owed)).toBe(
      'No more than $5,800.00 is owed in all.',
    );
    expect(commissionRefusalMessage({ code: 'more_than_owed', owedCents: 0n })).toBe(
      'Everything is paid; nothing is owed.',
    );
  });
});

const person = (...roles: Actor['roles']): Actor => ({ id: 'x', name: 'Ines Vale', roles });
const open = (facts: Parameters<typeof someFacts>[0], actor: Actor, owed: bigint | null = 1n) =>
  [...actsOpen(someFacts(facts), owed, actor, '2026-06-20')].sort();

describe('what can be done from the sheet', () => {
  const handOver = { handedOn: '2026-06-18', totalCents: 1n } as const;
  test.each<[string, Parameters<typeof someFacts>[0], Actor, bigint | null, Act[]]>([
    [
      'nothing is asked for before it is agreed',
      {},
      person('gallery'),
      null,
      [
        ...['changes', 'colours', 'days', 'delay', 'hang', 'page', 'pictures', 'progress'],
        ...(['request', 'sketch', 'yes'] as const),
      ] as Act[],
    ],
    [
      'the owner agrees, lets begin and ends',
      {},
      person('owner'),
      null,
      [
        ...['agreement', 'begin', 'changes', 'colours', 'days', 'delay', 'end', 'hang', 'page'],
        ...['pictures', 'progress', 'proposal', 'request', 'sketch', 'yes'],
      ] as Act[],
    ],
    [
      'after the hand-over what is owed is asked for and paid',
      { handOver, agreement },
      person('owner'),
      1n,
      ['ask', 'page', 'payment', 'progress'],
    ],
    [
      'what was made is remembered when it is paid',
      { handOver },
      person('owner'),
      0n,
      ['page', 'progress'],
    ],
    [
      'what is held beyond the end can go back',
      {
        ending: { endedOn: on, why: 'sold', feeCents: 0n },
        payments: [{ amountCents: 5n, receivedOn: on }],
      },
      person('owner'),
      0n,
      ['refund'],
    ],
    [
      'what stays of an early end does not go back, and is paid while it is owed',
      {
        ending: { endedOn: on, why: 'sold', feeCents: 6n },
        payments: [{ amountCents: 5n, receivedOn: on }],
      },
      person('owner'),
      1n,
      ['payment'],
    ],
    [
      'nothing is written to what has ended',
      { ending: { endedOn: on, why: 'sold', feeCents: 0n } },
      person('owner'),
      0n,
      [],
    ],
    ['the books look on', { agreement }, person('books'), 1n, []],
  ])('%s', (...row) => {
    const [, facts, actor, owed, expected] = row;
    expect(open(facts, actor, owed)).toEqual([...expected].sort());
  });
  test('it is handed over once its job is finished, and not before', () => {
    expect(open({ ...beforeClay, jobs: [aJob(3)] }, person('owner'))).not.toContain('hand-over');
    expect(open({ ...beforeClay, jobs: [aJob(finished)] }, person('owner'))).toContain('hand-over');
  });
  test('one job is opened, and the owner’s word is given once', () => {
    const override = { why: 'in a hurry', on } as const;
    const acts = open({ agreement, override, jobs: [aJob(0)] }, person('owner'));
    expect(acts).not.toContain('job');
    expect(acts).not.toContain('begin');
  });
});

const wall = { widthUm: 1_524_000, heightUm: 914_400, exposure: 'indoors', wall: 'brick' } as const;

describe('cautions from what is known', () => {
  test('a weight is shown with its working', () => {
    const weight = weightEstimate(wall, 'in');
    // 91.44 cm × 152.4 cm × 2.5 cm × 2.2 g in each cm³, by hand
    expect(weight?.weightG).toBe(76_645);
    expect(weight?.steps.join(' ')).toContain('36 in × 60 in');
  });
  test('there is no weight while a side is not known', () => {
    expect(weightEstimate({ ...wall, heightUm: null }, 'in')).toBeNull();
  });
  test.each([
    [
      'a heavy one on board alone',
      { ...wall, wall: 'gypsum_board' as const },
      'gypsum board alone',
    ],
    ['a heavy one on an unknown wall', { ...wall, wall: null }, 'find out what the wall'],
    ['outdoors', { ...wall, exposure: 'outdoors' as const }, 'frost'],
    ['above 100 lb', wall, 'Three people or a lift for about 169 lb'],
    ['above 50 lb', { ...wall, heightUm: 304_800 }, 'Two people for about 56 lb'],
  ])('%s', (_label, facts, words) => {
    expect(placeCautions(facts, 'in').join(' ')).toContain(words);
  });
  test('a small one on brick indoors needs none', () => {
    expect(placeCautions({ ...wall, widthUm: 254_000, heightUm: 254_000 }, 'in')).toEqual([]);
  });
});

describe('history', () => {
  const telling = { seesMoney: true, currency: 'USD' } as const;
  test('tells who said yes and how', () => {
    const facts = { approvedBy: 'Marit Oland', how: 'signed_card', sha256: 'ab' };
    const line = { who: 'Ines Vale', did: 'wrote down the yes to sketch A', facts };
    expect(historySentence(line, telling)).toBe(
      'Ines Vale wrote down the yes to sketch A: Marit Oland, on a signed card.',
    );
  });
  test('keeps amounts from whoever does not see money', () => {
    const facts = { amountCents: '500000', paidBy: 'Marit Oland' };
    const line = { who: 'Ines Vale', did: 'took a payment', facts };
    expect(historySentence(line, telling)).toContain('$5,000.00');
    expect(historySentence(line, { ...telling, seesMoney: false })).not.toContain('5');
  });

  test('what was typed with a stop at its end goes on without it', () => {
    const line = { who: 'Ines Vale', did: 'wrote change order 1' };
    const facts = { name: 'Two more terns, at the right.', priceCents: '42000' };
    expect(historySentence({ ...line, facts }, telling)).toBe(
      'Ines Vale wrote change order 1: Two more terns, at the right, $420.00.',
    );
  });
});

test('letters go on after Z', () => {
  expect([0, 1, 25, 26, 27].map(nextLetter)).toEqual(['A', 'B', 'Z', 'AA', 'BB']);
});
