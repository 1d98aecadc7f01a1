import { describe, expect, test } from 'vitest';
import type { Neighbour } from '@/lib/installation/rules';
import { decideQuestions, findQuestions, type AskFacts, type Goes } from '@/lib/installation/rules';
import { diaryRefusalMessage } from '@/lib/installation/rules/diary/refusals';
import { questionSentences } from '@/lib/installation/rules/diary/question-words';
import { wayKey } from '@/lib/installation/rules/crew/ways';
import { spanAt } from './a-span';

const zone = 'America/Los_Angeles';
const friday = '2026-05-08';
const morning = spanAt(friday, '10:00', '12:00');
const osip: Goes = { staffId: 'o', name: 'Osip Lund', workDays: [], absences: [], neighbours: [] };
const free: AskFacts = {
  ...{ zone, ready: null, owedCents: 0n, crew: [osip], ways: new Map(), closed: [] },
  place: { address: '4 Ropewalk Lane', travelMinutes: 40 },
};
const ferry = { kind: 'delivery', address: '9 Ferry Steps', travelMinutes: 25 } as const;

function abouts(change: Partial<AskFacts>, span = morning): string[] {
  return findQuestions({ ...free, ...change }, span).map(({ about }) => about);
}

function with_(change: Partial<Goes>): Partial<AskFacts> {
  return { crew: [{ ...osip, ...change }] };
}

function before(endsAt: string, more: Partial<Neighbour> = {}): Partial<AskFacts> {
  const neighbour = { ...ferry, ...spanAt(friday, '07:00', endsAt), ...more };
  return with_({ neighbours: [neighbour] });
}

test('a day that is as it should be asks nothing', () => {
  expect(abouts({})).toEqual([]);
});

describe('before it is ready', () => {
  const inHundred = 80;
  test.each([
    ['the day before', { readyOn: '2026-05-09', inHundred }, ['before_ready']],
    ['the day itself', { readyOn: friday, inHundred }, []],
    ['nobody can say', { readyOn: null, inHundred }, ['before_ready']],
    ['finished', null, []],
  ] as const)('%s', (_name, ready, asked) => {
    expect(abouts({ ready })).toEqual(asked);
  });
});

test('a balance that is owed is asked about, with its amount only for who sees money', () => {
  const questions = findQuestions({ ...free, owedCents: 120_050n }, morning);
  expect(questionSentences(questions, { zone, seesMoney: true }).balance_owed).toContain(
    '$1,200.50',
  );
  expect(questionSentences(questions, { zone, seesMoney: false }).balance_owed).not.toMatch(/\d/);
  expect(abouts({ owedCents: 1n })).toEqual(['balance_owed']);
});

describe('the way from one place to the next', () => {
  test.each([
    ['by the gallery takes both', before('08:55'), []],
    ['by the gallery, a minute short', before('08:56'), ['travel_short']],
    ['from the same place takes nothing', before('10:00', { address: '4 ropewalk lane.' }), []],
    [
      'as it is kept',
      { ...before('09:50'), ways: new Map([[wayKey('9 ferry steps', '4 Ropewalk Lane'), 10]]) },
      [],
    ],
    [
      'as it is kept, a minute short',
      { ...before('09:51'), ways: new Map([[wayKey('4 Ropewalk Lane', '9 Ferry Steps'), 10]]) },
      ['travel_short'],
    ],
  ] as const)('%s', (_name, change, asked) => {
    expect(abouts(change)).toEqual(asked);
  });

  test('to the next is asked about as well, and both are said', () => {
    const neighbours = [
      { ...ferry, ...spanAt(friday, '08:00', '09:30') },
      { ...ferry, ...spanAt(friday, '12:30', '13:00') },
    ];
    const questions = findQuestions({ ...free, ...with_({ neighbours }) }, morning);
    expect(questionSentences(questions, { zone, seesMoney: true })).toEqual({
      travel_short:
        'Osip Lund comes from the delivery at 9 Ferry Steps, which ends at 9:30 am: the way takes ' +
        '1 hour 5 minutes, and there are 30 minutes. Osip Lund goes on to the delivery at 9 Ferry ' +
        'Steps, which begins at 12:30 pm: the way takes 1 hour 5 minutes, and there are 30 minutes.',
    });
  });
});

describe('hours and days', () => {
  const fridays = { weekday: 5, fromMinute: 560, toMinute: 780 };
  const own = [fridays];
  test.each([
    ['the way there begins too early', {}, spanAt(friday, '09:39', '12:00'), ['outside_hours']],
    ['the way there begins as they do', {}, spanAt(friday, '09:40', '12:00'), []],
    ['the way back ends too late', {}, spanAt(friday, '14:00', '16:21'), ['outside_hours']],
    ['the way back ends as they do', {}, spanAt(friday, '14:00', '16:20'), []],
    ['their own hours hold', with_({ workDays: own }), morning, []],
    [
      'too late for their own',
      with_({ workDays: own }),
      spanAt(friday, '11:00', '12:21'),
      ['outside_hours'],
    ],
    [
      'a day on which they do not work',
      with_({ workDays: [{ ...fridays, weekday: 4 }] }),
      morning,
      ['outside_hours'],
    ],
    ['a Sunday', {}, spanAt('2026-05-10', '10:00', '12:00'), ['closed']],
    ['a Saturday', {}, spanAt('2026-05-09', '10:00', '12:00'), []],
    [
      'the studio stands still',
      { closed: [{ fromOn: friday, toOn: friday, why: '' }] },
      morning,
      ['closed'],
    ],
    [
      'the last day away',
      with_({ absences: [{ fromOn: '2026-05-01', toOn: friday, why: '' }] }),
      morning,
      ['absent'],
    ],
    [
      'the day after',
      with_({ absences: [{ fromOn: '2026-05-01', toOn: '2026-05-07', why: '' }] }),
      morning,
      [],
    ],
  ] as readonly (readonly [string, Partial<AskFacts>, typeof morning, readonly string[]])[])(
    '%s',
    (_name, change, span, asked) => {
      expect(abouts(change, span)).toEqual(asked);
    },
  );

  test('who comes from elsewhere that day does not come from the gallery', () => {
    const early = spanAt(friday, '09:10', '12:00');
    expect(abouts({}, early)).toEqual(['outside_hours']);
    const neighbours = [
      { ...ferry, address: '4 Ropewalk Lane', ...spanAt(friday, '08:00', '09:00') },
    ];
    expect(abouts(with_({ neighbours }), early)).toEqual([]);
  });

  test('each of the crew is told by name', () => {
    const ruth = { ...osip, staffId: 'r', name: 'Ruth Callow' };
    const absences = [{ fromOn: friday, toOn: '2026-05-11', why: 'The dentist' } as const];
    const questions = findQuestions({ ...free, crew: [osip, { ...ruth, absences }] }, morning);
    expect(questionSentences(questions, { zone, seesMoney: true })).toEqual({
      absent: 'Ruth Callow is away from Friday 8 May until Monday 11 May (The dentist).',
    });
  });
});

describe('what is asked is answered', () => {
  const questions = findQuestions(
    { ...free, owedCents: 5n, ready: { readyOn: null, inHundred: 80 } },
    morning,
  );
  const words = { before_ready: ' It is dry. ', balance_owed: 'Pays on the day.', closed: 'No.' };

  test('with a word on each; a word that nobody asked for is left out', () => {
    expect(decideQuestions(questions, words, true)).toEqual({
      ok: true,
      value: [
        { about: 'before_ready', why: 'It is dry.' },
        { about: 'balance_owed', why: 'Pays on the day.' },
      ],
    });
    expect(decideQuestions([], words, false)).toEqual({ ok: true, value: [] });
  });

  test.each([
    ['nothing', {}, true, false],
    ['one of two', { before_ready: 'It is dry.' }, true, false],
    ['blanks', { before_ready: '  ', balance_owed: 'Pays on the day.' }, true, false],
    ['by somebody who may not say', words, false, true],
  ])('%s is not enough', (_name, said, may, ownerAlone) => {
    const refusal = { code: 'asks', questions, ownerAlone } as const;
    expect(decideQuestions(questions, said, may)).toEqual({ ok: false, refusal });
    expect(diaryRefusalMessage(refusal, zone)).toMatch(/^2 things are not as it should be/);
    expect(diaryRefusalMessage(refusal, zone).includes('only the owner')).toBe(ownerAlone);
  });
});
