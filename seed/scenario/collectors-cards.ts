/** What a card of the demo tells besides the name; days are counted back from today. */
export type CardStory = {
  name: string;
  daysAgo: number;
  people: readonly Record<string, string>[];
  addresses: readonly Record<string, string>[];
  consents: readonly { to: string; said: 'yes' | 'no'; how: string; daysAgo: number }[];
  notes: readonly string[];
  /** Rooms and walls, for the pieces that they bought last; the last of them at the first address. */
  hangs: readonly string[];
};

/** Invented households and firms, with more than one name and more than one wall. */
export const cards: readonly CardStory[] = [
  {
    name: 'Nils and Ottoline Garrick',
    daysAgo: 40,
    people: [
      {
        ...{ name: 'Ottoline Garrick', said: 'OT-oh-leen', part: 'says yes to colours' },
        ...{ phone: '(555) 010-0301', reach: 'texts, after four' },
      },
      {
        ...{ name: 'Nils Garrick', part: 'pays', email: 'nils.garrick@collector.example' },
        reach: 'mail; never at work',
      },
      { name: 'Agneta Garrick', part: 'his mother, who buys the gifts', phone: '(555) 010-0302' },
    ],
    addresses: [
      {
        ...{ label: 'The cabin', street: '2 Alder Landing', city: 'Cedar Reach' },
        ...{ state: 'Alderland', postcode: '00016', note: 'The last mile is gravel.' },
      },
      {
        ...{ label: 'Her workshop', street: '19 Chandler Street', city: 'Port Quill' },
        ...{ state: 'Alderland', postcode: '00018' },
      },
    ],
    consents: [
      { to: 'letter', said: 'yes', how: 'in_person', daysAgo: 300 },
      { to: 'email', said: 'yes', how: 'form', daysAgo: 300 },
      { to: 'text', said: 'yes', how: 'form', daysAgo: 120 },
      { to: 'call', said: 'no', how: 'call', daysAgo: 60 },
      { to: 'pictures', said: 'yes', how: 'mail', daysAgo: 60 },
    ],
    notes: [
      'The cabin has one long wall of brick, two storeys, with light from the north.',
      'Said no to the river stones; loves anything with kelp.',
    ],
    hangs: ['stairs, north wall', 'over the stove, brick'],
  },
  {
    name: 'Lucasta and Emeka Hale',
    daysAgo: 25,
    people: [{ name: 'Emeka Hale', said: 'eh-MEH-ka', part: 'measures everything twice' }],
    addresses: [],
    consents: [
      { to: 'email', said: 'yes', how: 'fair', daysAgo: 200 },
      { to: 'email', said: 'no', how: 'mail', daysAgo: 25 },
    ],
    notes: ['Would lend the heron for a show in spring.'],
    hangs: ['hall, beside the door'],
  },
];

/** Somebody who was written down a second time, with a slip of the pen. */
export const twice = {
  ...{ kind: 'person', name: 'Phillipa Oduya', email: 'philippa.oduya@collector.example' },
  note: 'Asked at the counter about a second fern.',
};
