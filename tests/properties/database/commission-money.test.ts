import { fc, test } from '@fast-check/vitest';
import { beforeAll, expect } from 'vitest';
import { paymentKinds } from '@/lib/commissions/rules/words';
import { offerChange } from '@/lib/commissions/writes/agreement/change';
import { plainCents } from '@/lib/money/rules';
import { on } from '@/tests/database/commissions/a-commission';
import { moneyActs, type Agreed, type MoneyActs } from '@/tests/database/commissions/a-purse';
import {
  aChange,
  agreedByProposal,
  agreedOn,
  changeToSign,
  signChange,
} from '@/tests/database/commissions/an-agreement';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { alwaysTrue } from './always-true';

let gallery: OpenGallery;
let acts: MoneyActs;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  acts = moneyActs(gallery);
});

const step = fc.record({
  does: fc.constantFrom('ask', 'pay', 'pay', 'pay over', 'pay twice', 'back', 'back', 'change'),
  /** Cents, up to more than half of what is agreed. */
  cents: fc.bigInt({ min: 1n, max: 650_000n }),
  at: fc.nat(7),
});
type Step = { does: string; cents: bigint; at: number };

const course = fc.record({
  before: fc.array(step, { minLength: 2, maxLength: 5 }),
  end: fc.record({
    does: fc.constantFrom('hand over', 'hand over', 'end', 'end for'),
    cents: fc.bigInt({ min: 0n, max: 1_300_000n }),
    at: fc.nat(7),
  }),
  after: fc.array(step, { minLength: 0, maxLength: 3 }),
});

/** What is known of the money from the answers alone. */
type Purse = { paid: { id: string; cents: bigint }[]; inHand: bigint };

/** Does one thing; a refusal is an answer like any other here, and moves nothing. */
async function take(agreed: Agreed, step: Step, purse: Purse): Promise<unknown> {
  const { does, cents, at } = step;
  switch (does) {
    case 'ask':
      return acts.ask(agreed, cents, at < 3 ? at : null);
    case 'back':
      return giveBackOf(agreed, step, purse);
    case 'change':
      return changeIt(agreed, step);
    case 'hand over':
      return acts.handIt(agreed, 'They pay when it hangs.');
    case 'end':
      return acts.endIt(agreed);
    case 'end for':
      return acts.endIt(agreed, { own: cents });
    default:
      return payInto(agreed, step, purse);
  }
}

async function giveBackOf(agreed: Agreed, { cents, at }: Step, purse: Purse): Promise<void> {
  const of = purse.paid[at % Math.max(purse.paid.length, 1)];
  if (!of) return;
  const part = at % 2 === 0 ? of.cents : cents;
  const given = await acts.back(agreed, of.id, plainCents(part));
  if (given.ok) purse.inHand -= part;
}

/** A change that cannot be offered, as after the end, is left. */
async function changeIt({ commissionId }: Agreed, { cents, at }: Step): Promise<void> {
  const way = at % 3 === 0 ? 'less' : 'more';
  const owner = on(gallery.owner, agreedOn);
  const form = aChange(commissionId, { way, amountCents: plainCents(cents / 4n + 1n) });
  const offered = await offerChange(owner, form);
  if (!offered.ok) return;
  await signChange(owner, await changeToSign(commissionId, offered.value.changeOrderId));
}

async function payInto(agreed: Agreed, { does, cents, at }: Step, purse: Purse): Promise<void> {
  const how = { kind: paymentKinds[at % 4] ?? 'cash', keepsRest: does === 'pay over' };
  const sent = [acts.pay(agreed, cents, how)];
  if (does === 'pay twice') sent.push(acts.pay(agreed, cents, how));
  for (const taken of await Promise.all(sent)) {
    if (!taken.ok) continue;
    purse.paid.push({ id: taken.value.paymentId, cents });
    purse.inHand += cents;
  }
}

test.prop([course], { numRuns: 8, endOnFailure: true })(
  'whatever is asked for, paid, given back, changed, ended or handed over, the page says what the books say',
  async ({ before, end, after }) => {
    const agreed = await agreedByProposal(gallery);
    const purse: Purse = { paid: [], inHand: 0n };
    for (const each of [...before, end, ...after]) {
      await take(agreed, each, purse);
      const money = await acts.sums(agreed);
      expect(money.paidCents).toBe(purse.inHand);
      expect(money.dueCents <= money.owedCents).toBe(true);
    }
    for (const [name, query] of Object.entries(alwaysTrue)) {
      if (name.startsWith('cash in the drawer')) continue;
      expect([name, await sql(query)]).toEqual([name, []]);
    }
  },
  120_000,
);
