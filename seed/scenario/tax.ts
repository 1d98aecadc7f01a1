/** Invented states, rates and rules; days are counted back from today. */
export const otherPlaces = [
  {
    name: 'Osterport (invented rates)',
    state: 'Osterland',
    registeredDaysAgo: 300,
    rates: [
      { authority: 'State of Osterland', ratePercent: '4' },
      { authority: 'City of Osterport', ratePercent: '1.5' },
    ],
  },
  { name: 'Gull Point', state: 'Fenmark', registeredDaysAgo: null, rates: [] },
] as const;

/** What the gallery's own state says; the design work was taxed till the change. */
export const homeTreatments = [
  { kind: 'goods', treatment: 'taxed', shareBy: null, daysAgo: 700 },
  { kind: 'shipping', treatment: 'taxed', shareBy: 'by_price', daysAgo: 700 },
  { kind: 'installation', treatment: 'not_taxed_when_separate', shareBy: null, daysAgo: 700 },
  { kind: 'design_work', treatment: 'taxed', shareBy: null, daysAgo: 700 },
  { kind: 'design_work', treatment: 'not_taxed', shareBy: null, daysAgo: 120 },
] as const;

/** The state that pieces are sent to without tax, and what is said of its threshold. */
export const unregistered = {
  state: 'Fenmark',
  note: 'An invented figure. Read on the state’s own page; look again after new year.',
} as const;

/** Sent to Gull Point: how long ago, for whom, and the freight in cents. */
export const sentAway = [
  {
    daysAgo: 150,
    to: 'Mirren Askew, 4 Gull Point Road, Gull Point, Fenmark',
    freightCents: 3_800n,
  },
  { daysAgo: 61, to: 'Lorne Ashby, 18 Ropemakers Row, Gull Point, Fenmark', freightCents: 4_200n },
  { daysAgo: 9, to: 'Mirren Askew, 4 Gull Point Road, Gull Point, Fenmark', freightCents: 3_900n },
] as const;

/** What is agreed with those of the trade. */
export const trade = {
  discount: {
    name: 'Studio Halloran & Vane',
    percent: '15',
    sinceDaysAgo: 400,
    note: 'Buys in the studio’s name; crate without prices, please.',
  },
  referral: {
    name: 'Ravi Sundaresan Interiors',
    percent: '12.5',
    sinceDaysAgo: 260,
    note: 'His clients know. Tax form on file since the first payment.',
  },
} as const;

/** Certificates as they were handed in; the last one has run out. */
export const certificates = [
  {
    name: 'Studio Halloran & Vane',
    state: 'Alderland',
    permitNumber: 'A-4471-02',
    legalName: 'Halloran & Vane Interiors',
    buys: 'wall reliefs and tile for clients’ rooms',
    fromDaysAgo: 400,
    untilInDays: 330,
  },
  {
    name: 'Studio Halloran & Vane',
    state: 'Fenmark',
    permitNumber: 'FM 20918',
    legalName: 'Halloran & Vane Interiors',
    buys: 'wall reliefs',
    fromDaysAgo: 180,
    untilInDays: null,
  },
  {
    name: 'The Lantern House Inn',
    state: 'Alderland',
    permitNumber: 'A-1806-11',
    legalName: 'Lantern House Inn Company',
    buys: 'small pieces for the inn’s shop',
    fromDaysAgo: 790,
    untilInDays: -60,
  },
] as const;

/** Clients that a designer brought: how long ago, who bought, and whether the fee was paid since. */
export const broughtBy = [
  { daysAgo: 75, buyer: 'The Oyelaran household', isPaid: true },
  { daysAgo: 12, buyer: 'Imogen Achterberg', isPaid: false },
] as const;
