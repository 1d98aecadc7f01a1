import { describe, expect, test } from 'vitest';
import { claimFile } from '@/lib/sending/rules/claim-file';
import {
  claimActs,
  claimStageOf,
  decideClaim,
  decideClaimEvent,
  isClaimOpen,
  type ClaimEventKind,
  type ClaimHappened,
  type ClaimRefusal,
  type ClaimStage,
} from '@/lib/sending/rules/claims';
import { conditionMost, readMarks, type MarkRow } from '@/lib/sending/rules/condition';
import type { Happened } from '@/lib/sending/rules/way';

const came = (...kinds: ClaimEventKind[]): ClaimHappened[] =>
  kinds.map((kind) => ({ kind, on: '2026-11-21' }));
const today = '2026-11-25';

test.each<[ClaimEventKind[], ClaimStage, boolean]>([
  [[], 'to_tell', true],
  [['noted'], 'to_tell', true],
  [['told'], 'to_claim', true],
  [['told', 'claimed'], 'waiting', true],
  [['told', 'claimed', 'refused'], 'refused', false],
  [['told', 'claimed', 'refused', 'paid'], 'paid', false],
  [['told', 'withdrawn'], 'withdrawn', false],
])('%j stands at %s', (kinds, stage, isOpen) => {
  expect(claimStageOf(came(...kinds))).toBe(stage);
  expect(isClaimOpen(came(...kinds))).toBe(isOpen);
});

describe('damage is written down', () => {
  const sent: Happened[] = [{ kind: 'sent', on: '2026-11-12' }];

  test('once it left, on the day itself or after', () => {
    expect(decideClaim(sent, { foundOn: '2026-11-12', today }).ok).toBe(true);
    expect(decideClaim([{ kind: 'fetched', on: '2026-11-12' }], { foundOn: today, today }).ok).toBe(
      true,
    );
  });

  test.each<[Happened[], `${number}-${number}-${number}`, ClaimRefusal]>([
    [[], today, { code: 'not_sent_yet', stage: 'to_pack' }],
    [sent, '2026-11-11', { code: 'found_before_sent', sentOn: '2026-11-12' }],
    [sent, '2026-11-26', { code: 'claim_day_to_come', today }],
  ])('%j found on %s is refused', (events, foundOn, refusal) => {
    expect(decideClaim(events, { foundOn, today })).toEqual({ ok: false, refusal });
  });
});

describe('what comes of a claim', () => {
  const decide = (kinds: ClaimEventKind[], kind: ClaimEventKind, amountCents = 0n) =>
    decideClaimEvent(
      { foundOn: '2026-11-20', events: came(...kinds) },
      { kind, on: '2026-11-24', amountCents },
      today,
    );

  test('told, claimed, refused, and paid after all', () => {
    expect(decide([], 'told').ok).toBe(true);
    expect(decide(['told'], 'claimed').ok).toBe(true);
    expect(decide(['told', 'claimed'], 'refused').ok).toBe(true);
    expect(decide(['told', 'claimed', 'refused'], 'paid', 5_000n).ok).toBe(true);
    expect(decide(['told', 'claimed', 'paid'], 'noted').ok).toBe(true);
  });

  test.each<[ClaimEventKind[], ClaimEventKind, bigint, ClaimRefusal]>([
    [['told', 'withdrawn'], 'claimed', 0n, { code: 'claim_is_closed', stage: 'withdrawn' }],
    [['told'], 'told', 0n, { code: 'came_of_it_already', kind: 'told', on: '2026-11-21' }],
    [[], 'claimed', 0n, { code: 'not_told_yet' }],
    [['told'], 'paid', 100n, { code: 'not_claimed_yet' }],
    [['told'], 'refused', 0n, { code: 'not_claimed_yet' }],
    [['told', 'claimed'], 'paid', 0n, { code: 'paid_nothing' }],
    [['told'], 'claimed', 100n, { code: 'amount_for_nothing' }],
  ])('%j, then %s of %d is refused', (kinds, kind, amount, refusal) => {
    expect(decide(kinds, kind, amount)).toEqual({ ok: false, refusal });
  });

  test('nothing comes of it before it was found, nor on a day to come', () => {
    const claim = { foundOn: '2026-11-20', events: [] } as const;
    const told = (on: '2026-11-19' | '2026-11-26') =>
      decideClaimEvent(claim, { kind: 'told', on, amountCents: 0n }, today);
    expect(told('2026-11-19')).toMatchObject({ refusal: { code: 'before_found' } });
    expect(told('2026-11-26')).toMatchObject({ refusal: { code: 'claim_day_to_come' } });
  });

  test('only what may come next is offered', () => {
    expect(claimActs([])).toEqual(['told', 'withdrawn', 'noted']);
    expect(claimActs(came('told', 'claimed'))).toEqual(['paid', 'refused', 'withdrawn', 'noted']);
    expect(claimActs(came('told', 'claimed', 'paid'))).toEqual(['noted']);
  });
});

describe('marks on a picture', () => {
  const none: MarkRow = { x: null, y: null, words: '' };
  const chip: MarkRow = { x: 250, y: 0, words: 'chip' };

  test('rows that are empty are passed over', () => {
    expect(readMarks([none, chip, none], 0)).toEqual({ ok: true, value: [chip] });
  });

  test.each<[string, MarkRow[], number, object]>([
    ['none at all', [none, none], 0, { code: 'no_marks' }],
    [
      'a place without words',
      [none, { ...chip, words: '' }],
      0,
      { code: 'mark_without_words', mark: 2 },
    ],
    [
      'words without a place',
      [{ ...none, words: 'chip' }],
      0,
      { code: 'mark_without_place', mark: 1 },
    ],
    ['too many', [chip], conditionMost.marks, { code: 'too_many_marks', most: 24 }],
  ])('refuses %s', (_label, rows, standing, refusal) => {
    expect(readMarks(rows, standing)).toEqual({ ok: false, refusal });
  });
});

test('the file of a claim says what is missing', () => {
  const picture = [{}];
  const facts = {
    reports: [
      { when: 'out' as const, views: picture },
      { when: 'in' as const, views: [] },
    ],
    boxes: [{ scaleG: 1_000 }, { scaleG: null }],
    events: [{ kind: 'arrived' as const, words: '' }],
    ...{ tracking: 'CV 1', insuredCents: 0n },
  };
  const there = claimFile(facts, { pictures: picture }).map(({ isThere }) => isThere);
  expect(there).toEqual([true, false, false, true, false, true, false]);
});
