import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';

/** How late an invoice is, in the five drawers of a statement. */
export const ages = ['not_due', 'to_30', 'to_60', 'to_90', 'over_90'] as const;

/** One of {@link ages}. */
export type Age = (typeof ages)[number];

/** The ages as a statement heads them. */
export const ageWords: Readonly<Record<Age, string>> = {
  not_due: 'Not due yet',
  to_30: '1 to 30 days late',
  to_60: '31 to 60 days late',
  to_90: '61 to 90 days late',
  over_90: 'Over 90 days late',
};

/**
 * The day on which an invoice is due: so many days after the pieces left.
 *
 * @example dueDay('2026-11-25', 30) // '2026-12-25'; with 0 days it is the same day
 */
export function dueDay(shippedOn: Day, netDays: number): Day {
  return addDays(shippedOn, netDays);
}

/**
 * How late an invoice is. The due day itself is not late.
 *
 * @source common practice: thirty-day steps from the due day
 * @example ageOf('2026-11-25', '2026-12-26') // 'to_60': 31 days late
 */
export function ageOf(dueOn: Day, today: Day): Age {
  const late = daysBetween(dueOn, today);
  if (late <= 0) return 'not_due';
  if (late <= 30) return 'to_30';
  if (late <= 60) return 'to_60';
  return late <= 90 ? 'to_90' : 'over_90';
}

/** An invoice that a statement tells. */
export type OwedInvoice = { owedCents: Cents; dueOn: Day };

/**
 * A statement by age: what is owed in each, and together; the ages add up to the whole.
 *
 * @example nothing owed gives nought in every age
 */
export function statementByAge(
  invoices: readonly OwedInvoice[],
  today: Day,
): { byAge: { age: Age; cents: Cents }[]; totalCents: Cents } {
  const byAge = ages.map((age) => ({
    age,
    cents: sumCents(
      invoices.filter(({ dueOn }) => ageOf(dueOn, today) === age).map((each) => each.owedCents),
    ),
  }));
  return { byAge, totalCents: sumCents(invoices.map((each) => each.owedCents)) };
}
