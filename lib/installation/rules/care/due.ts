import { addDays, monthRange, type Day } from '@/lib/dates/rules';
import type { AppointmentKind } from '@/lib/installation/rules/diary/kinds';

/** The looks after a piece, in the order in which they usually come. */
export const afterCareKinds = [
  'two_days',
  'thirty_days',
  'before_frost',
  'a_year',
  'fixings',
] as const;

/** One of the {@link afterCareKinds}. */
export type AfterCareKind = (typeof afterCareKinds)[number];

/** Each as it is called. */
export const afterCareWords: Readonly<Record<AfterCareKind, string>> = {
  two_days: 'A call two days after',
  thirty_days: 'A look after thirty days',
  before_frost: 'A look before the frost',
  a_year: 'A look after a year',
  fixings: 'A look at the fixings',
};

/** What is asked, or looked at, each time. */
export const afterCareAsks: Readonly<Record<AfterCareKind, string>> = {
  two_days: 'Is everything as it should be? Is there anything they would like to know?',
  thirty_days: 'Is anything loose, is there a crack in the wall beside it, does the light suit it?',
  before_frost: 'Does water run off behind it, are the sealants whole, is a planter emptied?',
  a_year: 'How does it hang? A picture in place, and a sentence they would let us quote.',
  fixings: 'Cleat, stop screw and fixings by hand and eye; a licensed contractor where in doubt.',
};

/** What is known of a piece that was just handed over; null is "not known". */
export type JustHung = {
  readonly kind: AppointmentKind;
  readonly handedOn: Day;
  readonly isOutdoors: boolean;
  /** Whether it freezes there. */
  readonly freezes: boolean;
  readonly weightG: number | null;
  /** Months between looks at the fixings of heavy work. */
  readonly fixingsLookMonths: number;
};

/** From here on a piece is heavy: 50 lb, in grams. */
const heavyG = 22_680;

/**
 * When somebody looks after a piece that was handed over: two days, thirty days, a year; before the
 * frost where it hangs outdoors and it freezes; and its fixings, where it was hung and is heavy.
 *
 * @source common practice; frost is looked for by 1 October, north of the equator
 * @example a piece outdoors, handed over on 1 October, is looked at before the frost of next year
 */
export function afterCareDue(hung: JustHung): readonly { kind: AfterCareKind; dueOn: Day }[] {
  const { handedOn } = hung;
  const isHeavy = hung.kind === 'hanging' && (hung.weightG ?? 0) >= heavyG;
  return [
    { kind: 'two_days', dueOn: addDays(handedOn, 2) },
    { kind: 'thirty_days', dueOn: addDays(handedOn, 30) },
    { kind: 'a_year', dueOn: monthsAfter(handedOn, 12) },
    ...(hung.isOutdoors && hung.freezes
      ? [{ kind: 'before_frost' as const, dueOn: frostAfter(handedOn) }]
      : []),
    ...(isHeavy
      ? [{ kind: 'fixings' as const, dueOn: monthsAfter(handedOn, hung.fixingsLookMonths) }]
      : []),
  ];
}

function frostAfter(handedOn: Day): Day {
  const year = Number(handedOn.slice(0, 4));
  const thisYear: Day = `${year}-10-01`;
  return handedOn < thisYear ? thisYear : `${year + 1}-10-01`;
}

/** The day some months later; the last of its month where that has no such day. */
function monthsAfter(day: Day, months: number): Day {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const count = year * 12 + month - 1 + months;
  const { fromOn, untilOn } = monthRange(
    `${Math.floor(count / 12)}-${String((count % 12) + 1).padStart(2, '0') as `${number}`}`,
  );
  const lastOn = addDays(untilOn, -1);
  const wantedOn = addDays(fromOn, date - 1);
  return wantedOn < lastOn ? wantedOn : lastOn;
}
