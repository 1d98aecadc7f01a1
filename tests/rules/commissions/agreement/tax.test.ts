import { expect, test } from 'vitest';
import {
  taxOfCommission,
  type CommissionTaxAsked,
  type CommissionTaxRule,
} from '@/lib/commissions/rules/agreement/tax';
import {
  decideTaxRule,
  taxRuleWords,
  usedRuleWords,
  type DatedTaxRule,
} from '@/lib/commissions/rules/agreement/tax-days';

const rule: CommissionTaxRule = { treatment: 'not_taxed', owesOnMaterials: false, note: '' };
const asked: CommissionTaxAsked = {
  lines: [
    { kind: 'work', cents: 100_000n },
    { kind: 'freight', cents: 10_000n },
    { kind: 'installation', cents: 20_000n },
  ],
  setting: {
    place: 'Fernhollow',
    state: 'Washington',
    parts: [{ name: 'State', ratePercent: '10' }],
    treatments: [],
    isRegistered: true,
  },
  taxAs: 'set_in_pieces',
  rule: null,
  roundBy: 'invoice',
};

test.each([
  ['nothing kept: all of it', {}, 13_000n],
  ['not taxed', { rule }, 0n],
  ['taxed', { rule: { ...rule, treatment: 'taxed' } }, 13_000n],
  ['setting it apart', { rule: { ...rule, treatment: 'not_taxed_when_separate' } }, 11_000n],
  ['hung, not taxed there', { taxAs: 'goods_hung', rule }, 0n],
  ['hung, nothing kept', { taxAs: 'goods_hung' }, 13_000n],
] as const)('%s', (_what, change, taxCents) => {
  expect(taxOfCommission({ ...asked, ...change }).taxCents).toBe(taxCents);
});

test('a rule that sets the hanging apart takes the place of what the state says of hanging', () => {
  const treatments = [{ kind: 'installation', treatment: 'taxed', shareBy: null }] as const;
  const setting = { ...asked.setting, treatments: [...treatments] };
  const apart = { ...rule, treatment: 'not_taxed_when_separate' } as const;
  expect(taxOfCommission({ ...asked, setting, rule: apart }).perLine.at(-1)?.taxableCents).toBe(0n);
});

test.each([
  ['a hung piece has nothing to mind', { taxAs: 'goods_hung' }, []],
  ['no rule', {}, ['No rule is kept', 'A tax adviser decides']],
  [
    'its note',
    { rule: { ...rule, note: 'By their letter of May' } },
    ['By their letter of May', 'A tax adviser decides'],
  ],
  [
    'materials',
    { rule: { ...rule, owesOnMaterials: true } },
    ['owes tax on what the materials cost', 'A tax adviser decides'],
  ],
] as const)('what to mind: %s', (_what, change, words) => {
  const { cautions } = taxOfCommission({ ...asked, ...change });
  expect(cautions).toHaveLength(words.length);
  words.forEach((each, at) => expect(cautions[at]).toContain(each));
});

const kept = (fromOn: DatedTaxRule['fromOn'], untilOn: DatedTaxRule['untilOn']): DatedTaxRule => ({
  ...rule,
  ...{ id: fromOn, state: 'Washington', taxAs: 'fixture', fromOn, untilOn },
});

test.each([
  ['the first', [], '2026-07-01', { ok: true, value: null }],
  [
    'it closes the open one',
    [kept('2026-01-01', null)],
    '2026-07-01',
    { ok: true, value: { id: '2026-01-01' } },
  ],
  [
    'an ended one is left alone',
    [kept('2026-01-01', '2026-06-01')],
    '2026-07-01',
    { ok: true, value: null },
  ],
  [
    'on the day the last one ended',
    [kept('2026-01-01', '2026-07-01')],
    '2026-07-01',
    { ok: true, value: null },
  ],
  [
    'the same day',
    [kept('2026-07-01', null)],
    '2026-07-01',
    { ok: false, refusal: { code: 'tax_rule_follows_already', fromOn: '2026-07-01' } },
  ],
  [
    'before a later one',
    [kept('2026-09-01', null)],
    '2026-07-01',
    { ok: false, refusal: { fromOn: '2026-09-01' } },
  ],
  [
    'within an ended one',
    [kept('2026-01-01', '2026-08-01')],
    '2026-07-01',
    { ok: false, refusal: { fromOn: '2026-01-01' } },
  ],
] as const)('a rule that takes over: %s', (_what, rules, fromOn, decided) => {
  expect(decideTaxRule(rules, { taxAs: 'fixture', fromOn })).toMatchObject(decided);
});

test('the other ways of looking are not in the way', () => {
  const rules = [kept('2026-09-01', null)];
  expect(decideTaxRule(rules, { taxAs: 'set_in_pieces', fromOn: '2026-07-01' }).ok).toBe(true);
});

test('the rule that was used is told with its first day, or that there is none', () => {
  const about = { taxAs: 'fixture', where: 'Washington' } as const;
  expect(usedRuleWords(kept('2026-07-01', null), about)).toBe(
    'Washington, kept from 1 Jul 2026 on: Not taxed as a sale.',
  );
  expect(usedRuleWords(null, about)).toContain('no rule is kept for it, so it is taxed');
  expect(taxRuleWords({ ...rule, owesOnMaterials: true })).toContain('owes tax on');
});
