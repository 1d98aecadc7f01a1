/** The demo's fairs and shops: everything here is invented. */
export const fairs = {
  past: {
    name: 'Rain Market',
    town: 'Cedar Reach',
    fee: '180',
    travel: '46.50',
    other: '24',
    hours: '17:30',
    note: 'By the hall door, where it is dry. The corner table sees everyone who comes for soup.',
  },
  coming: {
    name: 'Lantern Week',
    town: 'Harrow Inlet',
    fee: '120',
    travel: '0',
    other: '35',
    hours: '',
    note: 'Bring the tall easel and the blanket for the bench.',
  },
} as const;

export const shops = {
  driftline: {
    kind: 'business',
    name: 'Driftline Goods',
    street: '40 Wharf Stairs',
    city: 'Cedar Reach',
    state: 'Alderland',
    postcode: '00031',
    email: 'hello@driftline.example',
    phone: '(555) 010-0162',
    note: 'Ysolde buys in March and September.',
  },
  tideAndThistle: {
    kind: 'business',
    name: 'Tide & Thistle',
    street: '3 Mill Row',
    city: 'Fennick Bridge',
    state: 'Alderland',
    postcode: '00047',
    email: 'post@tidethistle.example',
    phone: '(555) 010-0175',
    note: 'Opened last spring. Wants what nobody else on the road has.',
  },
} as const;
