import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Currency } from '@/lib/money/rules';
import { piecesWords } from '@/lib/studio/rules/words';
import type { Standing, WaitsOn } from './standing';
import type { Where, WhereKey } from './where';

/** How a sentence is told: on which day, and whether amounts may be named to whoever reads it. */
export type Telling = {
  readonly today: Day;
  readonly seesMoney: boolean;
  readonly currency: Currency;
};

/** Whom it waits on, as a heading of the list says it. */
export const waitsOnWords: Record<WaitsOn, string> = {
  collector: 'Waiting for the collector',
  gallery: 'Waiting for the gallery',
  studio: 'In the studio’s hands',
  installer: 'Waiting for the installer',
  nobody: 'Nothing to do now',
};

/**
 * Where a commission stands, as one sentence.
 *
 * @example standingSentence(of sketch C shown on 12 May, told on 20 May)
 *   // 'Waiting for the collector since 12 May: approve sketch C.'
 */
export function standingSentence(standing: Standing, telling: Telling): string {
  const { where, waitsOn } = standing;
  const told = toldOf(where).is(where, telling);
  if (waitsOn === 'nobody') return `${told}.`;
  const since = dayWord(standing.since, telling.today);
  const head = where.key === 'in_the_studio' ? 'In the studio' : `Waiting for the ${waitsOn}`;
  return `${head} since ${since}: ${told}.`;
}

/** What the button of the next thing says; null when there is nothing left to do. */
export function nextWords(where: Where): string | null {
  return toldOf(where).next(where);
}

/**
 * A day without its year when that is this year, as one says it.
 *
 * @example dayWord('2026-05-12', '2026-11-25') // '12 May'
 */
export function dayWord(day: Day, today: Day): string {
  const written = formatDay(day, 'short');
  return day.slice(0, 4) === today.slice(0, 4) ? written.slice(0, -5) : written;
}

type Told<Key extends WhereKey> = {
  /** The end of the sentence; the whole of it where nobody is waited for. */
  is: (where: Where<Key>, telling: Telling) => string;
  next: (where: Where<Key>) => string | null;
};

const nothing = () => null;
const kindDone = { hanging: 'hung', delivery: 'delivered', fetching: 'fetched' } as const;
const kindToDo = {
  hanging: 'hang it',
  delivery: 'deliver it',
  fetching: 'they fetch it',
} as const;

const told: { [Key in WhereKey]: Told<Key> } = {
  to_propose: {
    is: () => 'propose a price and a day',
    next: () => 'Write a proposal',
  },
  proposal_to_send: {
    is: ({ version }) => `send proposal ${version}`,
    next: ({ version }) => `Send proposal ${version}`,
  },
  proposal_out: {
    is: ({ version, validUntilOn }, { today }) =>
      `answer proposal ${version}, which holds until ${dayWord(validUntilOn, today)}`,
    next: ({ version }) => `Write down the answer to proposal ${version}`,
  },
  proposal_ran_out: {
    is: ({ version }) => `proposal ${version} has run out, write a new one`,
    next: () => 'Write the next proposal',
  },
  to_sign: {
    is: () => 'sign the agreement',
    next: () => 'Sign the agreement',
  },
  to_agree: {
    is: () => 'agree on the price and the day',
    next: () => 'Write down what was agreed',
  },
  sketch_to_show: {
    is: ({ letter }) => `draw and show sketch ${letter}`,
    next: () => 'Show a sketch',
  },
  sketch_shown: {
    is: ({ letter }) => `approve sketch ${letter}`,
    next: ({ letter }) => `Write down the yes to sketch ${letter}`,
  },
  colours_to_show: {
    is: ({ number, areas }) =>
      `make and show colour tile ${number}${areas.length > 0 ? `, for ${areas.join(' and ')}` : ''}`,
    next: () => 'Show a colour tile',
  },
  twin_to_give: {
    is: ({ number }) => `give the twin of colour tile ${number} to the collector`,
    next: ({ number }) => `Give the twin of tile ${number}`,
  },
  colours_shown: {
    is: ({ number }) => `approve colour tile ${number}`,
    next: ({ number }) => `Write down the yes to tile ${number}`,
  },
  deposit_to_ask: {
    is: ({ leftCents }, telling) => `ask for the deposit${amount(leftCents, telling)}`,
    next: () => 'Ask for the deposit',
  },
  deposit_asked: {
    is: ({ leftCents }, telling) => `pay the deposit${amount(leftCents, telling)}`,
    next: () => 'Take a payment',
  },
  days_to_cancel: {
    is: ({ clayFromOn }, { today }) =>
      `Signed at their home, it can still be cancelled: no clay before ${dayWord(clayFromOn, today)}`,
    next: nothing,
  },
  job_to_open: {
    is: () => 'open the job, so that the making can begin',
    next: () => 'Open the job',
  },
  clay_to_begin: {
    is: ({ jobNumber }) => `begin with the clay of job ${jobNumber}`,
    next: ({ jobNumber }) => `Go to job ${jobNumber}`,
  },
  in_the_studio: {
    is: (where) => standsAt(where),
    next: ({ jobNumber }) => `Go to job ${jobNumber}`,
  },
  wall_to_look_at: {
    is: () => 'it is finished, find out what its wall is made of',
    next: () => 'Look at the wall',
  },
  hanging_to_book: {
    is: () => 'it is finished, book the hanging',
    next: () => 'Book the hanging',
  },
  hanging_booked: {
    is: ({ kind, on }, { today }) => `${kindToDo[kind]} on ${dayWord(on, today)}`,
    next: () => 'Look at the day',
  },
  to_hand_over: {
    is: ({ kind }) => `it was to be ${kindDone[kind]}, hand it over`,
    next: () => 'Hand it over',
  },
  rest_owed: {
    is: ({ leftCents }, telling) => `pay the rest${amount(leftCents, telling)}`,
    next: () => 'Take a payment',
  },
  handed_over: {
    is: ({ handedOn }, { today }) => `Handed over on ${dayWord(handedOn, today)}, and paid`,
    next: nothing,
  },
  ended: {
    is: ({ endedOn, why }, { today }) =>
      `Ended early on ${dayWord(endedOn, today)}: ${withoutFullStop(why)}`,
    next: nothing,
  },
};

function toldOf<Key extends WhereKey>(where: Where<Key>): Told<Key> {
  return told[where.key];
}

function standsAt(where: Where<'in_the_studio'>): string {
  const ofHowMany = piecesWords(where.ofPieces);
  const pieces = where.pieces === where.ofPieces ? ofHowMany : `${where.pieces} of ${ofHowMany}`;
  return `${pieces} at ${where.at}`;
}

function withoutFullStop(sentence: string): string {
  return sentence.trim().replace(/[.\s]+$/, '');
}

function amount(cents: bigint, { seesMoney, currency }: Telling): string {
  return seesMoney ? `, ${formatCents(cents, { currency })}` : '';
}

/** What each place holds up, as the end of "It holds up …"; null where nothing waits behind it. */
export const holdsUpWords: Record<WhereKey, string | null> = {
  to_propose: 'everything else',
  proposal_to_send: 'the agreement',
  proposal_out: 'the agreement',
  proposal_ran_out: 'the agreement',
  to_sign: 'the deposit and the clay',
  to_agree: 'the hand-over',
  sketch_to_show: 'the colours and the clay',
  sketch_shown: 'the colours and the clay',
  colours_to_show: 'the clay',
  twin_to_give: 'the yes to the colour, and the clay',
  colours_shown: 'the clay',
  deposit_to_ask: 'the clay',
  deposit_asked: 'the clay',
  days_to_cancel: 'the clay',
  job_to_open: 'the clay',
  clay_to_begin: 'the drying, which nothing can hurry',
  in_the_studio: 'the hanging',
  wall_to_look_at: 'the day of the hanging',
  hanging_to_book: 'the hand-over and the balance',
  hanging_booked: 'the hand-over',
  to_hand_over: 'the papers and the income',
  rest_owed: null,
  handed_over: null,
  ended: null,
};
