import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { band } from '@/lib/commissions/rules/course/band';
import { mayBegin, paidCents, type CommissionFacts } from '@/lib/commissions/rules/facts';
import { standingSentence } from '@/lib/commissions/rules/course/sentences';
import { standing } from '@/lib/commissions/rules/course/standing';
import { addDays, type Day } from '@/lib/dates/rules';
import { someFacts } from '@/tests/rules/commissions/some-facts';

const today: Day = '2026-12-31';

/** One thing that happens to a commission, some days after the one before. */
type Event = { kind: string; after: number; cents: bigint };

const event = fc.record({
  kind: fc.constantFrom(
    ...['agree', 'sketch', 'yes to sketch', 'tile', 'yes to tile', 'ask', 'pay', 'override', 'end'],
  ),
  after: fc.integer({ min: 0, max: 9 }),
  cents: fc.bigInt({ min: 1n, max: 1_000_000n }),
});

type Shown = CommissionFacts['colourTiles'];

function asTiles(shown: CommissionFacts['sketches']): Shown {
  return shown.map((each) => ({ ...each, givenOn: each.shownOn }));
}

function approveLast(shown: Shown, on: Day): Shown {
  return shown.map((each, place) =>
    place === shown.length - 1 ? { ...each, approvedOn: each.approvedOn ?? on } : each,
  );
}

function show(shown: Shown, on: Day): Shown {
  const label = String(shown.length + 1);
  const yes = { approvedOn: null, changesOn: null, areas: [], givenOn: on };
  return [...shown, { label, shownOn: on, ...yes }];
}

function happen(facts: CommissionFacts, { kind, cents }: Event, on: Day): CommissionFacts {
  const price = { priceCents: cents * 2n, originalCents: cents * 2n, depositCents: cents };
  const agreed = { agreedOn: on, ...price, promisedOn: null, clayFromOn: null };
  const next: Record<string, Partial<CommissionFacts>> = {
    agree: { agreement: agreed },
    sketch: { sketches: show(asTiles(facts.sketches), on) },
    'yes to sketch': { sketches: approveLast(asTiles(facts.sketches), on) },
    tile: { colourTiles: show(facts.colourTiles, on) },
    'yes to tile': { colourTiles: approveLast(facts.colourTiles, on) },
    ask: {
      asked: [...facts.asked, { amountCents: cents, askedOn: on, dueOn: on, stepPosition: null }],
    },
    pay: { payments: [...facts.payments, { amountCents: cents, receivedOn: on }] },
    override: { override: { why: 'The shop opens in June.', on } },
    end: { ending: { endedOn: on, why: 'The house was sold.', feeCents: 0n } },
  };
  return { ...facts, ...next[kind] };
}

function story(events: readonly Event[]): CommissionFacts[] {
  let on: Day = '2026-05-01';
  let facts = someFacts();
  return events.map((each) => {
    on = addDays(on, each.after);
    facts = happen(facts, each, on);
    return facts;
  });
}

/** The rule once more, said as plainly as it can be. */
function isAllThere(facts: CommissionFacts): boolean {
  const { agreement } = facts;
  return (
    agreement !== null &&
    facts.sketches.some((each) => each.approvedOn !== null) &&
    facts.colourTiles.some((each) => each.approvedOn !== null) &&
    paidCents(facts) >= agreement.depositCents
  );
}

const stories = fc.array(event, { minLength: 1, maxLength: 24 });

test.prop([stories])(
  'the making may begin only with all four or the owner’s word, and never after the end',
  (events) => {
    for (const facts of story(events)) {
      const { may, missing, byOverride } = mayBegin(facts, '2027-01-01');
      expect(may).toBe(facts.ending === null && (isAllThere(facts) || facts.override !== null));
      expect(missing.length === 0).toBe(isAllThere(facts));
      expect(byOverride).toBe(missing.length > 0 && facts.override !== null);
    }
  },
);

test.prop([stories])(
  'it always stands somewhere, waits since a day that has come, and says so in one sentence',
  (events) => {
    for (const facts of story(events)) {
      const now = standing(facts, today);
      expect(now.since >= facts.askedOn && now.since <= today).toBe(true);
      const sentence = standingSentence(now, { today, seesMoney: true, currency: 'USD' });
      expect(sentence).toMatch(/^[A-Z].*\.$/);
      if (now.waitsOn !== 'nobody') expect(sentence).toMatch(/ since \d/);
    }
  },
);

test.prop([stories])('at most one peg is next, and none that is done', (events) => {
  for (const facts of story(events)) {
    const pegs = band(facts, standing(facts, today).where);
    expect(pegs.filter((peg) => peg.state === 'next').length).toBeLessThanOrEqual(1);
    expect(pegs.every((peg) => (peg.state === 'done') === (peg.on !== null))).toBe(true);
  }
});
