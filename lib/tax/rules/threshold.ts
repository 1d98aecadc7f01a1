import { addDays, parseDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';
import { invariant } from '@/lib/platform/invariant';

/** Over what time a state counts what is sent there. */
export const thresholdWindows = [
  'this_calendar_year',
  'this_or_last_calendar_year',
  'twelve_months',
] as const;

/** One of those times. */
export type ThresholdWindow = (typeof thresholdWindows)[number];

/** The windows as a form offers them. */
export const thresholdWindowWords: Record<ThresholdWindow, string> = {
  this_calendar_year: 'this calendar year',
  this_or_last_calendar_year: 'this calendar year or the last',
  twelve_months: 'the last twelve months',
};

/** From how much of what a gallery must register; null where the state does not count it. */
export type Threshold = Readonly<{
  thresholdCents: Cents | null;
  thresholdSales: number | null;
  needsBoth: boolean;
}>;

/** A span of days that is counted, half open, and how it is said. */
export type CountedSpan = Readonly<{ fromOn: Day; untilOn: Day; words: string }>;

/** What was sent to a state in a span: before tax, less what came back, and in how many sales. */
export type Sent = Readonly<{ cents: Cents; sales: number }>;

/** How near what was sent is to a threshold, and the sentence that says so. */
export type ThresholdStanding = Readonly<{
  kind: 'nothing_kept' | 'below' | 'near' | 'reached';
  words: string;
}>;

/** From here on, in a hundred of the threshold, the owner is told. */
export const nearFrom = 80n;

/**
 * The spans that a window counts, the present one first.
 *
 * @example countedSpans('this_calendar_year', '2026-11-25')[0].untilOn // '2027-01-01'
 */
export function countedSpans(window: ThresholdWindow, today: Day): CountedSpan[] {
  const year = Number(today.slice(0, 4));
  const thisYear = yearSpan(year, 'this calendar year');
  if (window === 'this_calendar_year') return [thisYear];
  if (window === 'this_or_last_calendar_year') {
    return [thisYear, yearSpan(year - 1, 'last calendar year')];
  }
  const untilOn = addDays(today, 1);
  return [{ fromOn: yearEarlier(untilOn), untilOn, words: 'in the last twelve months' }];
}

function yearSpan(year: number, words: string): CountedSpan {
  const first = (of: number): Day => `${of}-01-01`;
  return { fromOn: first(year), untilOn: first(year + 1), words };
}

function yearEarlier(day: Day): Day {
  const year = Number(day.slice(0, 4)) - 1;
  const read = parseDay(`${year}${day.slice(4)}`);
  return read.ok ? read.value : `${year}-02-28`;
}

/**
 * How what was sent to a state stands against its threshold: the span that is furthest on counts.
 *
 * An amount that is reached to the cent counts as reached. Where both are needed, the one that is
 * further behind decides; otherwise the one that is further on.
 *
 * @param counted each span with what was sent in it, the present one first
 * @source each state's own; the owner keeps the figures with the day they were looked up
 * @example 80,000.00 of 100,000.00 is near; a cent less is below
 */
export function thresholdStanding(
  threshold: Threshold,
  counted: readonly (CountedSpan & { sent: Sent })[],
): ThresholdStanding {
  const [present] = counted;
  invariant(present, 'At least one span is counted.');
  if (threshold.thresholdCents === null && threshold.thresholdSales === null) {
    const { sent, words } = present;
    const amount = `${formatCents(sent.cents)} and ${salesWords(sent.sales)}`;
    const soFar = sent.sales === 0 && sent.cents === 0n ? 'nothing' : amount;
    return { kind: 'nothing_kept', words: `${soFar} ${words}; no threshold is kept.` };
  }
  const furthest = counted.reduce((one, other) =>
    inHundred(threshold, other.sent) > inHundred(threshold, one.sent) ? other : one,
  );
  const reached = inHundred(threshold, furthest.sent);
  const kind = reached >= 100n ? 'reached' : reached >= nearFrom ? 'near' : 'below';
  return { kind, words: `${ofThreshold(threshold, furthest.sent)} ${furthest.words}.` };
}

function inHundred({ thresholdCents, thresholdSales, needsBoth }: Threshold, sent: Sent): bigint {
  const shares: bigint[] = [];
  if (thresholdCents !== null) shares.push((sent.cents * 100n) / thresholdCents);
  if (thresholdSales !== null) shares.push(BigInt(sent.sales * 100) / BigInt(thresholdSales));
  return shares.reduce((one, other) => (needsBoth === other < one ? other : one));
}

function ofThreshold({ thresholdCents, thresholdSales }: Threshold, sent: Sent): string {
  const amount = formatCents(sent.cents);
  const cents = thresholdCents === null ? amount : `${amount} of ${formatCents(thresholdCents)}`;
  const sales =
    thresholdSales === null ? salesWords(sent.sales) : `${sent.sales} of ${thresholdSales} sales`;
  return `${cents} and ${sales}`;
}

function salesWords(sales: number): string {
  return sales === 1 ? '1 sale' : `${sales} sales`;
}
