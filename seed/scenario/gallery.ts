/**
 * The demo's gallery. Everything here is invented: the place, the people, the prices and the tax
 * rates. Telephone numbers are of the range kept for fiction.
 */
export const gallery = {
  name: 'Saltwood Relief',
  tagline: 'Clay from a wet coast',
  street: '14 Skiff Lane',
  city: 'Harrow Inlet',
  state: 'Alderland',
  postcode: '00014',
  phone: '(555) 010-0144',
  email: 'door@saltwood.example',
  timeZone: 'America/Los_Angeles',
  currency: 'USD',
  lengthUnit: 'in',
  returnTerms:
    'Bring a piece back within 14 days, whole and with this receipt, for another or for credit. ' +
    'Commissions and seconds are final.',
  roundTaxBy: 'invoice',
  layawayTerms:
    'The piece is put away under your name until the last day. Pay in parts as you like, the last ' +
    'part by then. If you call it off, what you paid goes back less 10 in 100 of the price, and if ' +
    'we cannot hand it over as it was, all of it goes back.',
} as const;

export const floorName = 'Gallery floor';
export const backRoomName = 'Back room';

/** Invented rates, in per cent. The town's part went up in the second year. */
export const taxPlaces = [
  {
    name: 'Harrow Inlet (invented rates)',
    rates: [
      { authority: 'State of Alderland', ratePercent: '5.5', from: 'beginning' },
      { authority: 'Inlet County', ratePercent: '1.25', from: 'beginning' },
      { authority: 'Town of Harrow Inlet', ratePercent: '0.5', from: 'beginning', until: 'change' },
      { authority: 'Town of Harrow Inlet', ratePercent: '0.75', from: 'change' },
    ],
  },
  {
    name: 'Cedar Reach (invented rates)',
    rates: [
      { authority: 'State of Alderland', ratePercent: '5.5', from: 'beginning' },
      { authority: 'Reach County', ratePercent: '2.125', from: 'beginning' },
    ],
  },
] as const;
