/** Whose names stand on the demo's holds, invented; the known ones are in the address book. */
export const holds = [
  {
    who: 'Imogen Achterberg',
    known: true,
    heldHoursAgo: 70,
    untilInDays: -1,
    untilTime: '17:00',
    note: 'asks her sister',
  },
  {
    who: 'Wenna Tolliver',
    known: false,
    heldHoursAgo: 43,
    untilInDays: 1,
    untilTime: '10:00',
    note: '',
  },
  {
    who: 'The Oyelaran household',
    known: true,
    heldHoursAgo: 20,
    untilInDays: 3,
    untilTime: '17:00',
    note: 'for the stair',
  },
  {
    who: 'Casimir Lund',
    known: false,
    heldHoursAgo: 2,
    untilInDays: 2,
    untilTime: '17:00',
    note: '',
  },
] as const;

/** Who waits: for the piece of which hold, by its place above; null is for one that is sold out. */
export const waiting = [
  { who: 'Petra Hollowell', what: 'second_in_line', hold: 2, note: '', hoursAgo: 15 },
  {
    who: 'Anders Quillfeather',
    what: 'back_again',
    hold: null,
    note: 'the blue one',
    hoursAgo: 400,
  },
  { who: 'Saffron Iddon', what: 'back_again', hold: 1, note: 'two of them', hoursAgo: 90 },
] as const;

/** Layaways: begun how long ago, in how many payments, and when a payment came in. */
export const layaways = [
  { who: 'Bettina Crowle', begunDaysAgo: 47, days: 90, payments: 3, paidDaysAgo: [47] },
  { who: 'Dougal Finnhaven', begunDaysAgo: 24, days: 60, payments: 4, paidDaysAgo: [24, 10] },
  { who: 'Ana and Piet Ruyter', begunDaysAgo: 61, days: 60, payments: 2, paidDaysAgo: [61, 32, 2] },
] as const;

/** What was taken home to be tried, and when it is due. */
export const approvals = [
  {
    ...{ who: 'Ravi Sundaresan Interiors', daysAgo: 9, dueInDays: -2 },
    ...{ condition: '', security: 'A cheque for the whole price, kept in the safe.' },
  },
  {
    ...{ who: 'Imogen Achterberg', daysAgo: 3, dueInDays: 4 },
    condition: 'A hair-fine craze in the left corner, seen with her.',
    security: 'Known for years.',
  },
] as const;

/** What was sold and still hangs here: until when, in days from today. */
export const stillHere = [
  { who: 'The Oyelaran household', soldDaysAgo: 16, untilInDays: -1, note: 'after their painters' },
  { who: 'Dougal Finnhaven', soldDaysAgo: 4, untilInDays: 12, note: 'until the show is over' },
] as const;
