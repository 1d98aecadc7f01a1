import { describe, expect, test } from 'vitest';
import { band } from '@/lib/commissions/rules/course/band';
import type { CommissionFacts, ProposalFact } from '@/lib/commissions/rules/facts';
import { nextWords, standingSentence } from '@/lib/commissions/rules/course/sentences';
import { groupOrder, standing } from '@/lib/commissions/rules/course/standing';
import type { WhereKey } from '@/lib/commissions/rules/course/where';
import { aJob, agreement, beforeClay, finished, paid, shown, someFacts } from './some-facts';

const today = '2026-06-20';
const telling = { today, seesMoney: true, currency: 'USD' } as const;
const hanging = { kind: 'hanging', on: '2026-06-25' } as const;
const handOver = { handedOn: '2026-06-18', totalCents: 1_080_000n } as const;

const aProposal: ProposalFact = {
  version: 1,
  writtenOn: '2026-05-02',
  sentOn: '2026-05-03',
  validUntilOn: '2026-06-02',
  answer: null,
};

type Row = { facts: Partial<CommissionFacts>; sentence: string; next: string | null };

/** One row for every place where a commission can stand: a new place without a row fails. */
const rows: Record<WhereKey, Row> = {
  to_propose: {
    facts: {},
    sentence: 'Waiting for the gallery since 1 May: propose a price and a day.',
    next: 'Write a proposal',
  },
  proposal_to_send: {
    facts: { proposals: [{ ...aProposal, sentOn: null }] },
    sentence: 'Waiting for the gallery since 2 May: send proposal 1.',
    next: 'Send proposal 1',
  },
  proposal_out: {
    facts: { proposals: [{ ...aProposal, validUntilOn: '2026-07-01' }] },
    sentence: 'Waiting for the collector since 3 May: answer proposal 1, which holds until 1 Jul.',
    next: 'Write down the answer to proposal 1',
  },
  proposal_ran_out: {
    facts: { proposals: [aProposal] },
    sentence: 'Waiting for the gallery since 2 Jun: proposal 1 has run out, write a new one.',
    next: 'Write the next proposal',
  },
  to_sign: {
    facts: { proposals: [{ ...aProposal, answer: { accepted: true, on: '2026-05-04' } }] },
    sentence: 'Waiting for the collector since 4 May: sign the agreement.',
    next: 'Sign the agreement',
  },
  to_agree: {
    facts: {
      override: { why: 'The shop opens in June.', on: '2026-05-05' },
      jobs: [aJob(finished)],
    },
    sentence: 'Waiting for the gallery since 20 May: agree on the price and the day.',
    next: 'Write down what was agreed',
  },
  sketch_to_show: {
    facts: { agreement },
    sentence: 'Waiting for the studio since 4 May: draw and show sketch A.',
    next: 'Show a sketch',
  },
  sketch_shown: {
    facts: { agreement, sketches: [shown('A', '2026-05-06'), shown('C', '2026-05-12')] },
    sentence: 'Waiting for the collector since 12 May: approve sketch C.',
    next: 'Write down the yes to sketch C',
  },
  colours_to_show: {
    facts: { agreement, sketches: beforeClay.sketches },
    sentence: 'Waiting for the studio since 8 May: make and show colour tile 1.',
    next: 'Show a colour tile',
  },
  colours_shown: {
    facts: {
      agreement,
      sketches: beforeClay.sketches,
      colourTiles: [shown('1', '2026-05-10')],
    },
    sentence: 'Waiting for the collector since 10 May: approve colour tile 1.',
    next: 'Write down the yes to tile 1',
  },
  twin_to_give: {
    facts: {
      agreement,
      sketches: beforeClay.sketches,
      colourTiles: [{ ...shown('1', '2026-05-10'), givenOn: null }],
    },
    sentence:
      'Waiting for the gallery since 10 May: give the twin of colour tile 1 to the collector.',
    next: 'Give the twin of tile 1',
  },
  deposit_to_ask: {
    facts: { ...beforeClay, payments: [paid(100_000n, '2026-05-13')] },
    sentence: 'Waiting for the gallery since 4 May: ask for the deposit, $4,000.00.',
    next: 'Ask for the deposit',
  },
  deposit_asked: {
    facts: {
      ...beforeClay,
      payments: [],
      asked: [
        {
          amountCents: 500_000n,
          askedOn: '2026-05-13',
          dueOn: '2026-05-27',
          stepPosition: null,
        },
      ],
    },
    sentence: 'Waiting for the collector since 13 May: pay the deposit, $5,000.00.',
    next: 'Take a payment',
  },
  days_to_cancel: {
    facts: { ...beforeClay, agreement: { ...agreement, clayFromOn: '2026-06-22' } },
    sentence: 'Signed at their home, it can still be cancelled: no clay before 22 Jun.',
    next: null,
  },
  job_to_open: {
    facts: beforeClay,
    sentence: 'Waiting for the studio since 13 May: open the job, so that the making can begin.',
    next: 'Open the job',
  },
  clay_to_begin: {
    facts: { ...beforeClay, jobs: [aJob(0)] },
    sentence: 'Waiting for the studio since 14 May: begin with the clay of job 7.',
    next: 'Go to job 7',
  },
  in_the_studio: {
    facts: { ...beforeClay, jobs: [aJob(3)] },
    sentence: 'In the studio since 20 May: 4 pieces at drying.',
    next: 'Go to job 7',
  },
  wall_to_look_at: {
    facts: { ...beforeClay, jobs: [aJob(finished)], isWallKnown: false },
    sentence:
      'Waiting for the gallery since 20 May: it is finished, find out what its wall is made of.',
    next: 'Look at the wall',
  },
  hanging_to_book: {
    facts: { ...beforeClay, jobs: [aJob(finished)] },
    sentence: 'Waiting for the gallery since 20 May: it is finished, book the hanging.',
    next: 'Book the hanging',
  },
  hanging_booked: {
    facts: { ...beforeClay, jobs: [aJob(finished)], appointments: [hanging] },
    sentence: 'Waiting for the installer since 20 May: hang it on 25 Jun.',
    next: 'Look at the day',
  },
  to_hand_over: {
    facts: {
      ...beforeClay,
      jobs: [aJob(finished)],
      appointments: [{ kind: 'delivery', on: today }],
    },
    sentence: 'Waiting for the gallery since 20 Jun: it was to be delivered, hand it over.',
    next: 'Hand it over',
  },
  rest_owed: {
    facts: { ...beforeClay, jobs: [aJob(finished)], handOver },
    sentence: 'Waiting for the collector since 18 Jun: pay the rest, $5,800.00.',
    next: 'Take a payment',
  },
  handed_over: {
    facts: { ...beforeClay, handOver, payments: [paid(1_080_000n, '2026-05-13')] },
    sentence: 'Handed over on 18 Jun, and paid.',
    next: null,
  },
  ended: {
    facts: {
      ...beforeClay,
      ending: { endedOn: '2025-12-03', why: 'The house was sold.', feeCents: 0n },
    },
    sentence: 'Ended early on 3 Dec 2025: The house was sold.',
    next: null,
  },
};

describe('where a commission stands is told from its facts alone', () => {
  test.each(Object.entries(rows))('%s', (key, row) => {
    const now = standing(someFacts(row.facts), today);
    expect(now.where.key).toBe(key);
    expect(standingSentence(now, telling)).toBe(row.sentence);
    expect(nextWords(now.where)).toBe(row.next);
    expect(now.permission === null).toBe(row.next === null);
  });
});

test('amounts are not named to whoever does not see money', () => {
  const now = standing(someFacts(rows.rest_owed.facts), today);
  const sentence = standingSentence(now, { ...telling, seesMoney: false });
  expect(sentence).toBe('Waiting for the collector since 18 Jun: pay the rest.');
});

test('changes that were asked for are the studio’s to answer, with the next letter or tile', () => {
  const sketch = { ...shown('A', '2026-05-06'), changesOn: '2026-05-09' } as const;
  expect(standing(someFacts({ agreement, sketches: [sketch] }), today)).toMatchObject({
    ...{ where: { key: 'sketch_to_show', letter: 'B' }, since: '2026-05-09', waitsOn: 'studio' },
  });
  const tile = { ...shown('1', '2026-05-10'), changesOn: '2026-05-11' } as const;
  const { sketches } = beforeClay;
  expect(standing(someFacts({ agreement, sketches, colourTiles: [tile] }), today)).toMatchObject({
    ...{ where: { key: 'colours_to_show', number: 2 }, since: '2026-05-11', waitsOn: 'studio' },
  });
});

test('every colour area of the sketch waits for a tile of its own', () => {
  const sketches = [{ ...shown('A', '2026-05-06', '2026-05-08'), areas: ['Sky', 'Water'] }];
  const tile = { ...shown('1', '2026-05-10', '2026-05-12'), areas: ['sky'] };
  const now = standing(someFacts({ agreement, sketches, colourTiles: [tile] }), today);
  expect(now.where).toEqual({ key: 'colours_to_show', number: 2, areas: ['Water'] });
});

test('a no to a proposal is the gallery’s turn again', () => {
  const no = { ...aProposal, answer: { accepted: false, on: '2026-05-05' } } as const;
  const now = standing(someFacts({ proposals: [no] }), today);
  expect(now).toMatchObject({ where: { key: 'to_propose' }, since: '2026-05-05' });
});

test('a sketch that waits for its yes is the collector’s to answer before anything is agreed', () => {
  const now = standing(someFacts({ sketches: [shown('A', '2026-05-03')] }), today);
  expect(now).toMatchObject({ waitsOn: 'collector', since: '2026-05-03' });
});

test('a sketch that was approved keeps counting when another one is shown after it', () => {
  const sketches = [...beforeClay.sketches, shown('B', '2026-05-30')];
  expect(standing(someFacts({ ...beforeClay, sketches }), today).where.key).toBe('job_to_open');
});

test('the owner’s word skips what is missing, from the day it was given', () => {
  const override = { why: 'The shop opens in June.', on: '2026-05-05' } as const;
  const now = standing(someFacts({ agreement, override }), today);
  expect(now).toMatchObject({ where: { key: 'job_to_open' }, since: '2026-05-05' });
});

test('a price that is raised after the clay was begun does not take the making back', () => {
  const raised = { ...agreement, depositCents: 900_000n };
  const facts = someFacts({ ...beforeClay, agreement: raised, jobs: [aJob(2)] });
  expect(standing(facts, today).where.key).toBe('in_the_studio');
});

test('what was begun without an agreement is agreed on before it is booked', () => {
  const override = { why: 'The shop opens in June.', on: '2026-05-05' } as const;
  const facts = someFacts({ override, jobs: [aJob(finished)] });
  expect(standing(facts, today).where.key).toBe('to_agree');
});

test('parts that went ahead and parts that did not: the ones furthest behind are told', () => {
  const job = aJob(2);
  const [first] = job.moves;
  if (!first) throw new Error('The job has moves.');
  const moves = [first, { ...first, id: '9', fromPosition: 1, toPosition: 2, pieces: 3 }];
  const facts = someFacts({ ...beforeClay, jobs: [{ ...job, moves }] });
  expect(standingSentence(standing(facts, today), telling)).toBe(
    'In the studio since 20 May: 1 of 4 pieces at casting.',
  );
});

describe('the band', () => {
  const bandOf = (over: Partial<CommissionFacts>) => {
    const facts = someFacts(over);
    return band(facts, standing(facts, today).where);
  };
  const states = (over: Partial<CommissionFacts>) => bandOf(over).map((peg) => peg.state.charAt(0));

  test('begins with everything open and "agreed" next', () => {
    expect(states({}).join('')).toBe('nooooooooo');
  });
  test('in the studio the first state of the clay that is not done is next', () => {
    expect(states({ ...beforeClay, jobs: [aJob(4)] }).join('')).toBe('ddddddnooo');
  });
  test('a route without an assembly is past it when its parts are finished', () => {
    const pegs = bandOf({ ...beforeClay, jobs: [aJob(finished)] });
    expect(pegs.find((peg) => peg.name === 'assembled')).toEqual({
      name: 'assembled',
      state: 'done',
      on: '2026-05-20',
    });
  });
  test('two jobs: a state is done when both are past it', () => {
    expect(states({ ...beforeClay, jobs: [aJob(finished), aJob(3)] }).join('')).toBe('dddddnoooo');
  });
  test('names the day on which the payments reached the deposit', () => {
    const payments = [paid(200_000n, '2026-05-09'), paid(300_000n, '2026-05-21')];
    const peg = bandOf({ ...beforeClay, payments }).find((each) => each.name === 'deposit');
    expect(peg?.on).toBe('2026-05-21');
  });
  test('nothing is next once it was handed over or has ended', () => {
    expect(states(rows.rest_owed.facts)).not.toContain('n');
    expect(states(rows.ended.facts)).not.toContain('n');
  });
});

test('a maker sees the studio’s own first, the gallery its own', () => {
  expect(groupOrder(['maker'])[0]).toBe('studio');
  expect(groupOrder(['gallery', 'maker'])[0]).toBe('gallery');
});
