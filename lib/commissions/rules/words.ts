/** Where a piece will live. */
export const exposures = ['indoors', 'under_cover', 'outdoors'] as const;

/** Indoors, under a roof outside, or in the weather. */
export type Exposure = (typeof exposures)[number];

/** The exposures as they are said. */
export const exposureWords: Record<Exposure, string> = {
  indoors: 'indoors',
  under_cover: 'outside, under cover',
  outdoors: 'outdoors, in the weather',
};

/** What a wall is made of. */
export const wallKinds = [
  'wood_studs',
  'steel_studs',
  'brick',
  'block',
  'concrete',
  'plaster_on_lath',
  'gypsum_board',
] as const;

/** One of the kinds of wall; gypsum board means the board alone, with nothing known behind it. */
export type WallKind = (typeof wallKinds)[number];

/** The walls as they are said. */
export const wallWords: Record<WallKind, string> = {
  wood_studs: 'wood studs behind board',
  steel_studs: 'steel studs behind board',
  brick: 'brick',
  block: 'concrete block',
  concrete: 'concrete',
  plaster_on_lath: 'plaster on lath',
  gypsum_board: 'gypsum board, no stud found',
};

/** How a yes was given. */
export const approvalWays = ['in_person', 'signed_card', 'by_mail'] as const;

/** In person, on a signed card, by mail, or by the collector on their own page. */
export type ApprovalWay = (typeof approvalWays)[number] | 'on_their_page';

/** The ways a yes is given, as they are said. */
export const approvalWayWords: Record<ApprovalWay, string> = {
  in_person: 'in person',
  signed_card: 'on a signed card',
  by_mail: 'by mail',
  on_their_page: 'on their own page',
};

/** What a collector can pay with. */
export const paymentKinds = ['cash', 'card', 'cheque', 'bank_transfer'] as const;

/** Cash, card, cheque or bank transfer. */
export type PaymentKind = (typeof paymentKinds)[number];

/** The kinds of payment as they are said. */
export const paymentWords: Record<PaymentKind, string> = {
  cash: 'cash',
  card: 'card',
  cheque: 'cheque',
  bank_transfer: 'bank transfer',
};

/**
 * The letter of a commission's next sketch.
 *
 * @param shown how many were shown before
 * @example nextLetter(26) // 'AA': after Z the letters begin again, doubled
 */
export function nextLetter(shown: number): string {
  const letter = String.fromCharCode(65 + (shown % 26));
  return letter.repeat(Math.floor(shown / 26) + 1);
}
