import type { CommissionLineKind } from '@/lib/commissions/rules/proposal/lines';
import type { Cents } from '@/lib/money/rules';
import { workOutTax, type RoundBy, type TaxDue, type TaxKind } from '@/lib/tax/rules';
import {
  taxableOf,
  type LineTaxed,
  type TaxSetting,
  type TreatmentKind,
} from '@/lib/tax/rules/treatment';
import { stopped } from './words';

/** How the tax looks at a commission. */
export const taxWays = ['goods_hung', 'fixture', 'set_in_pieces'] as const;

/** Goods that are hung, a fixture, or pieces set one by one into a wall as part of the building. */
export type CommissionTaxAs = (typeof taxWays)[number];

/** The ways as they are said. */
export const taxWayWords: Record<CommissionTaxAs, string> = {
  goods_hung: 'a piece that is hung, and can be taken down again',
  fixture: 'a fixture of the building',
  set_in_pieces: 'pieces set one by one into a wall, as part of the building',
};

/** What a state says about a commission as the tax looks at it. The owner keeps these. */
export type CommissionTaxRule = {
  readonly treatment: TreatmentKind;
  /** Whether the artist owes tax on what the materials cost instead. */
  readonly owesOnMaterials: boolean;
  readonly note: string;
};

/** How each kind of line is looked at by the tax. */
export const taxKindOfLine: Record<CommissionLineKind, TaxKind> = {
  work: 'goods',
  frame: 'goods',
  design_fee: 'design_work',
  crate: 'shipping',
  freight: 'shipping',
  travel: 'installation',
  installation: 'installation',
};

/** What decides about the tax of a commission. */
export type CommissionTaxAsked = {
  readonly lines: readonly { readonly kind: CommissionLineKind; readonly cents: Cents }[];
  readonly setting: TaxSetting;
  readonly taxAs: CommissionTaxAs;
  /** Null where the owner keeps none: then it is taxed as goods. */
  readonly rule: CommissionTaxRule | null;
  readonly roundBy: RoundBy;
};

/** The tax of a commission, line by line, and what to mind. */
export type CommissionTax = {
  readonly perLine: readonly (LineTaxed & { readonly taxCents: Cents })[];
  readonly taxCents: Cents;
  readonly parts: TaxDue['parts'];
  readonly exemptWhy: string;
  readonly cautions: readonly string[];
};

/**
 * The sales tax of a commission, exact to the cent. Each line is treated by its kind as its state
 * says; what becomes part of a building follows the rule that the owner keeps for it.
 *
 * @source the treatment of lines: lib/tax/rules/treatment; that some authorities hold an artist who
 *   sets pieces into a building for the consumer of the materials is common practice: an adviser
 *   decides
 * @example set in pieces where that is not taxed: no tax, and a word that materials are
 */
export function taxOfCommission(asked: CommissionTaxAsked): CommissionTax {
  const { lines, taxAs, rule, roundBy } = asked;
  const setting = withRule(asked.setting, rule);
  const looked = lines.map(({ kind, cents }) => ({
    ...{ cents, kind: taxKindOfLine[kind], weightG: null, isSeparate: kind !== 'work' },
  }));
  const exemption = exemptionOf(asked);
  const { perLine, exemptWhy } = taxableOf(looked, setting, exemption);
  const due = workOutTax({
    lines: perLine.map(({ taxableCents }) => ({ cents: taxableCents, taxable: true })),
    parts: setting.parts,
    roundBy,
  });
  return {
    perLine: perLine.map((line, at) => ({ ...line, taxCents: due.perLineCents[at] ?? 0n })),
    taxCents: due.taxCents,
    parts: due.parts,
    exemptWhy,
    cautions: cautionsOf(taxAs, rule, setting),
  };
}

function exemptionOf({ taxAs, rule, setting }: CommissionTaxAsked): { why: string } | null {
  if (rule?.treatment !== 'not_taxed') return null;
  const what = capital(taxWayWords[taxAs]);
  return { why: `${what}: not taxed as a sale in ${whereOf(setting)}.` };
}

/** Where the rule says "not taxed when it stands apart", it is the hanging or setting that stands so. */
function withRule(setting: TaxSetting, rule: CommissionTaxRule | null): TaxSetting {
  if (rule?.treatment !== 'not_taxed_when_separate') return setting;
  const others = setting.treatments.filter(({ kind }) => kind !== 'installation');
  const { treatment } = rule;
  return {
    ...setting,
    treatments: [...others, { kind: 'installation', treatment, shareBy: null }],
  };
}

function whereOf({ state, place }: Pick<TaxSetting, 'state' | 'place'>): string {
  return state === '' ? place : state;
}

function cautionsOf(
  taxAs: CommissionTaxAs,
  rule: CommissionTaxRule | null,
  setting: TaxSetting,
): string[] {
  const note = rule && rule.note !== '' ? [stopped(rule.note)] : [];
  const owes = rule?.owesOnMaterials
    ? ['The gallery then owes tax on what the materials cost. It is not part of this sum.']
    : [];
  if (taxAs === 'goods_hung') return [...note, ...owes];
  const none = `No rule is kept for ${taxWayWords[taxAs]} in ${whereOf(setting)}, so it is taxed like a piece that is sold.`;
  return [
    ...(rule ? note : [none]),
    ...owes,
    'Some authorities hold whoever sets pieces into a building for the consumer of the materials. A tax adviser decides.',
  ];
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
