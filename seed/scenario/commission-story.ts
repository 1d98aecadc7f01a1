/** How far a commission of the demo has gone, in the order in which it happens. */
export const stages = [
  'asked',
  'sketch shown',
  'agreed',
  'deposit asked',
  'colours shown',
  'ready to begin',
  'drying',
  'bisque',
  'glazing',
  'curing',
  'finished',
  'booked',
  'handed over',
] as const;

export type Stage = (typeof stages)[number];

/** Days are days before the demo is loaded; `until` says how far the story has gone. */
export type CommissionStory = {
  collector: string;
  title: string;
  motif: string;
  colourway: string;
  wish: string;
  avoid?: string;
  colours?: string;
  room?: string;
  wall?:
    | 'wood_studs'
    | 'steel_studs'
    | 'brick'
    | 'block'
    | 'concrete'
    | 'plaster_on_lath'
    | 'gypsum_board';
  exposure?: 'indoors' | 'under_cover' | 'outdoors';
  siteAddress?: string;
  width?: string;
  height?: string;
  depth?: string;
  wishedInDays?: number;
  budgetFromCents?: bigint;
  budgetToCents?: bigint;
  priceCents?: bigint;
  parts?: number;
  /** Its numbered drawing, laid as a grid of as many parts. */
  drawnAs?: { rows: number; columns: number };
  /** What the scale said, with its board; then how it hangs is planned. */
  weightG?: number;
  askedDaysAgo: number;
  until: Stage;
  paidInFull?: boolean;
  endedWhy?: string;
  begunEarlyWhy?: string;
  /** A visit to measure the wall; days from the day of loading, below zero for one that was. */
  visitInDays?: number;
};
