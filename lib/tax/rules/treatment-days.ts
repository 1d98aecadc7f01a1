import { formatDay, type Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { TreatedKind, Treatment } from './treatment';

/** The kinds that a state may treat in its own way, in the order in which a page lists them. */
export const treatedKinds = [
  'goods',
  'shipping',
  'installation',
  'design_work',
] as const satisfies readonly TreatedKind[];

/** The kinds as a page names them. */
export const treatedKindWords: Record<TreatedKind, string> = {
  goods: 'Pieces',
  shipping: 'Delivery',
  installation: 'Installation',
  design_work: 'Design work',
};

/** What a state says about one kind, with the days on which it says so. */
export type DatedTreatment = Treatment & Readonly<{ id: string; fromOn: Day; untilOn: Day | null }>;

/** Why a treatment was not taken. */
export type TreatmentRefusal = {
  code: 'treatment_follows_already';
  kind: TreatedKind;
  fromOn: Day;
};

/**
 * Which treatment a new one takes the place of, if it may.
 *
 * @param kept all of the state, in any order
 * @returns the one to close on the new one's first day, null when there is none open; refuses
 *   `treatment_follows_already` when the kind has one from that day or a later one, or one that
 *   still holds then and has its end
 * @example delivery “not taxed” from 1 July closes “taxed”, whose last day is then 30 June
 */
export function decideTreatment(
  kept: readonly DatedTreatment[],
  asked: Pick<DatedTreatment, 'kind' | 'fromOn'>,
): Result<DatedTreatment | null, TreatmentRefusal> {
  const { kind, fromOn } = asked;
  const own = kept.filter((each) => each.kind === kind);
  const inTheWay = own.find((each) => each.fromOn >= fromOn || (each.untilOn ?? '') > fromOn);
  if (inTheWay) {
    return refuse({ code: 'treatment_follows_already', kind, fromOn: inTheWay.fromOn });
  }
  return ok(own.find((each) => each.untilOn === null) ?? null);
}

/** Says in a full sentence why a treatment was not taken. */
export function treatmentRefusalMessage({ kind, fromOn }: TreatmentRefusal): string {
  return (
    `${treatedKindWords[kind]}: something is kept from ${formatDay(fromOn, 'short')} that reaches ` +
    'into these days. Choose a later first day.'
  );
}

/**
 * Says what a state says about a kind of line, as one sentence of a list.
 *
 * @example treatmentWords({ kind: 'installation', treatment: 'taxed', shareBy: null }) // 'Taxed.'
 */
export function treatmentWords({ kind, treatment, shareBy }: Treatment): string {
  const words = treatmentSaid[treatment];
  if (kind !== 'shipping' || treatment === 'not_taxed') return `${words}.`;
  return `${words}. ${shareSaid[shareBy ?? 'by_price']}`;
}

const treatmentSaid = {
  taxed: 'Taxed',
  not_taxed: 'Not taxed',
  not_taxed_when_separate: 'Not taxed when it is a line of its own; taxed within another price',
} as const;

const shareSaid = {
  by_price: 'Brought together with untaxed pieces, it is shared by price.',
  by_weight: 'Brought together with untaxed pieces, it is shared by weight.',
  all_taxed: 'Brought together with untaxed pieces, all of it is taxed.',
} as const;
