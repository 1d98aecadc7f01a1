import { splitCents, sumCents, type Cents } from '@/lib/money/rules';
import type { TaxKind, TaxPart } from '../rules';

/** The kinds of line that a state may treat in its own way. */
export type TreatedKind = Exclude<TaxKind, 'none'>;

/** Taxed, not taxed, or not taxed when it stands as a line of its own on the paper. */
export type TreatmentKind = 'taxed' | 'not_taxed' | 'not_taxed_when_separate';

/** How a charge for delivering taxed and untaxed goods together is shared. */
export type DeliveryShare = 'by_price' | 'by_weight' | 'all_taxed';

/** What a state says about one kind of line; `shareBy` is for shipping only. */
export type Treatment = Readonly<{
  kind: TreatedKind;
  treatment: TreatmentKind;
  shareBy: DeliveryShare | null;
}>;

/** One line of a sale as the tax looks at it. */
export type TaxableLine = Readonly<{
  /** The price of the whole line after discounts, in cents. */
  cents: Cents;
  kind: TaxKind;
  /** What the whole line weighs, in grams; null when nobody knows. */
  weightG: number | null;
  /** Whether it stands as a line of its own on the paper, not within another price. */
  isSeparate: boolean;
}>;

/** Everything that decides about the tax at a place on a day. */
export type TaxSetting = Readonly<{
  place: string;
  state: string;
  parts: TaxPart[];
  treatments: Treatment[];
  /** Whether the gallery collects tax in that state on that day. */
  isRegistered: boolean;
}>;

/** How much of a line is taxed; `why` is empty where the whole of it is. */
export type LineTaxed = Readonly<{ taxableCents: Cents; why: string }>;

/** What is taxed of a sale, line by line, and why nothing is where nothing is. */
export type Taxable = Readonly<{ perLine: LineTaxed[]; exemptWhy: string }>;

/**
 * How much of each line of a sale is taxed.
 *
 * A kind that nothing is kept for is taxed. Delivery and installation follow the goods: where none
 * of them is taxed, neither is what brings or hangs them. A charge for delivering taxed and untaxed
 * goods together is shared by price, by weight (by price when a weight is not known), or taxed whole,
 * as the state says.
 *
 * @param exemption why nothing of it is taxed, such as a certificate for resale; null for none
 * @returns in the lines' order; never more than the line. Where the gallery is not registered
 *   nothing is charged, and `exemptWhy` says so
 * @source Streamlined Sales and Use Tax Agreement; Revised Code of Washington 82.08.145 for the two
 *   ways to share; New York TB-ST-838 for delivery that follows the goods
 * @example goods 300.00 taxed and 100.00 not, delivery 40.00 by price: 30.00 of it is taxed
 */
export function taxableOf(
  lines: readonly TaxableLine[],
  setting: TaxSetting,
  exemption: { why: string } | null,
): Taxable {
  const sold = lines.some((line) => line.kind !== 'none');
  const exemptWhy = !setting.isRegistered ? notRegisteredWords(setting) : (exemption?.why ?? '');
  if (exemptWhy !== '') {
    const perLine = lines.map((line) =>
      line.kind === 'none' ? forLater : { taxableCents: 0n, why: exemptWhy },
    );
    return { perLine, exemptWhy: sold ? exemptWhy : '' };
  }
  const goods = goodsOf(lines, setting);
  return { perLine: lines.map((line) => taxedLine(line, setting, goods)), exemptWhy: '' };
}

/**
 * What is kept for a kind of line, or what holds while nothing is: taxed, delivery shared by price.
 *
 * @example treatmentOf([], 'installation').treatment // 'taxed'
 */
export function treatmentOf(treatments: readonly Treatment[], kind: TreatedKind): Treatment {
  const kept = treatments.find((each) => each.kind === kind);
  return kept ?? { kind, treatment: 'taxed', shareBy: null };
}

const forLater: LineTaxed = { taxableCents: 0n, why: 'Money for later is no sale yet.' };

function notRegisteredWords({ state, place }: TaxSetting): string {
  return (
    `The gallery is not registered in ${state === '' ? place : state}, so no tax is charged; ` +
    'the sale counts towards the threshold there.'
  );
}

type Goods = { taxed: TaxableLine[]; untaxed: TaxableLine[] };

function goodsOf(lines: readonly TaxableLine[], setting: TaxSetting): Goods {
  const goods = lines.filter((line) => line.kind === 'goods');
  const isTaxed = (line: TaxableLine) => whyUntaxed(line, 'goods', setting) === null;
  return { taxed: goods.filter(isTaxed), untaxed: goods.filter((line) => !isTaxed(line)) };
}

function taxedLine(line: TaxableLine, setting: TaxSetting, goods: Goods): LineTaxed {
  const { kind, cents } = line;
  if (kind === 'none') return forLater;
  const untaxed = whyUntaxed(line, kind, setting);
  if (untaxed !== null) return { taxableCents: 0n, why: untaxed };
  if (kind === 'goods' || kind === 'design_work') return { taxableCents: cents, why: '' };
  if (goods.untaxed.length === 0) return { taxableCents: cents, why: '' };
  if (goods.taxed.length === 0) {
    return { taxableCents: 0n, why: 'It goes with pieces that are not taxed.' };
  }
  return kind === 'shipping'
    ? sharedDelivery(cents, treatmentOf(setting.treatments, kind).shareBy ?? 'by_price', goods)
    : { taxableCents: cents, why: '' };
}

function whyUntaxed(line: TaxableLine, kind: TreatedKind, setting: TaxSetting): string | null {
  const { treatment } = treatmentOf(setting.treatments, kind);
  const where = setting.state === '' ? setting.place : setting.state;
  switch (treatment) {
    case 'taxed':
      return null;
    case 'not_taxed':
      return `${kindSaid[kind]} is not taxed in ${where}.`;
    case 'not_taxed_when_separate':
      return line.isSeparate
        ? `${kindSaid[kind]} is not taxed in ${where} as a line of its own.`
        : null;
  }
}

const kindSaid: Record<TreatedKind, string> = {
  goods: 'A piece',
  shipping: 'Delivery',
  installation: 'Installation',
  design_work: 'Design work',
};

function sharedDelivery(cents: Cents, shareBy: DeliveryShare, goods: Goods): LineTaxed {
  if (shareBy === 'all_taxed') return { taxableCents: cents, why: '' };
  const weights = shareBy === 'by_weight' ? weightsOf(goods) : null;
  const shares = weights ?? pricesOf(goods);
  if (shares[0] + shares[1] <= 0n) return { taxableCents: cents, why: '' };
  const [taxableCents = cents] = splitCents(cents, shares);
  return { taxableCents, why: sharedWhy(shareBy, weights !== null) };
}

function sharedWhy(shareBy: DeliveryShare, weighed: boolean): string {
  if (weighed) return 'The taxed pieces’ share of the delivery by weight.';
  const why = 'The taxed pieces’ share of the delivery by price';
  return shareBy === 'by_weight' ? `${why}, because a weight is not known.` : `${why}.`;
}

type Shares = readonly [taxed: bigint, untaxed: bigint];

function pricesOf({ taxed, untaxed }: Goods): Shares {
  return [sumCents(taxed.map(({ cents }) => cents)), sumCents(untaxed.map(({ cents }) => cents))];
}

/** Null when a line's weight is not known, or nothing weighs anything. */
function weightsOf({ taxed, untaxed }: Goods): Shares | null {
  const sum = (lines: readonly TaxableLine[]) =>
    lines.reduce<bigint | null>(
      (all, { weightG }) => (all === null || weightG === null ? null : all + BigInt(weightG)),
      0n,
    );
  const [heavy, light] = [sum(taxed), sum(untaxed)];
  return heavy === null || light === null || heavy + light === 0n ? null : [heavy, light];
}
