/** The demo's places and the galleries that sell for it: everything here is invented. */
export const kilnShed = 'Kiln shed';

export const otherGalleries = {
  saltgrass: {
    kind: 'business',
    name: 'Saltgrass Rooms',
    street: '12 Causeway End',
    city: 'Port Quill',
    state: 'Alderland',
    postcode: '00052',
    email: 'desk@saltgrass.example',
    phone: '(555) 010-0183',
    note: 'Ottilie hangs them herself, low and by the north window.',
    sharePercent: '50',
    payDays: '15',
    terms: 'For six months, then at will. No discount above 10% without a call.',
  },
  netLoft: {
    kind: 'business',
    name: 'The Net Loft',
    street: '2 Upper Slip',
    city: 'Fennick Bridge',
    state: 'Alderland',
    postcode: '00047',
    email: 'loft@netloft.example',
    phone: '(555) 010-0191',
    note: 'Open from spring to the first storms.',
    sharePercent: '40',
    payDays: '30',
    terms: '',
  },
} as const;

/** What goes with the papers. */
export const noteWords = {
  first: 'In two crates, the tall one upright.',
  second: 'For their autumn wall.',
  toBackRoom: 'Made room for the winter pieces.',
} as const;
