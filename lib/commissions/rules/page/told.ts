import type { BandPeg, BandPegName } from '@/lib/commissions/rules/course/band';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import type { Where, WhereKey } from '@/lib/commissions/rules/course/where';
import type { Day } from '@/lib/dates/rules';

/** The pegs of the band as a collector calls them. */
export const pegsForCollector: Readonly<Record<BandPegName, string>> = {
  agreed: 'Agreed',
  sketch: 'Sketch chosen',
  colours: 'Colours chosen',
  deposit: 'Deposit paid',
  clay: 'In the clay',
  dry: 'Dry',
  bisque: 'First firing',
  glaze: 'Glaze firing',
  assembled: 'Put together',
  hung: 'On your wall',
};

/** A band as it is drawn: what is done filled, what is next open. */
export type PegTold = { name: string; state: 'filled' | 'next' | 'open'; when?: string };

const states = { done: 'filled', next: 'next', open: 'open' } as const;

/** The band in the collector's words; a day without its year when that is this year. */
export function pegsTold(band: readonly BandPeg[], today: Day): PegTold[] {
  return band.map(({ name, state, on }) => ({
    name: pegsForCollector[name],
    state: states[state],
    ...(on ? { when: dayWord(on, today) } : {}),
  }));
}

const kinds = { hanging: 'hung', delivery: 'delivered', fetching: 'handed to you' } as const;

type Told<Key extends WhereKey> = (where: Where<Key>, today: Day) => string;

const told: { readonly [Key in WhereKey]: Told<Key> } = {
  to_propose: () => 'We are preparing a proposal for you.',
  proposal_to_send: () => 'We are preparing a proposal for you.',
  proposal_out: ({ version }) => `Proposal ${version} is waiting for your word.`,
  proposal_ran_out: () => 'Our proposal has run out. Ask us for a new one.',
  to_sign: () => 'The agreement is waiting for your name.',
  to_agree: () => 'We are preparing it with you.',
  sketch_to_show: () => 'We are drawing. You will see the sketch here.',
  sketch_shown: ({ letter }) => `Sketch ${letter} is waiting for your word.`,
  colours_to_show: () => 'We are firing tiles in your colours. You will have them in your hand.',
  twin_to_give: ({ number }) => `Colour tile ${number} is on its way into your hands.`,
  colours_shown: ({ number }) => `Colour tile ${number} is waiting for your word.`,
  deposit_to_ask: () => 'The clay can begin once the deposit is here.',
  deposit_asked: () => 'The clay can begin once the deposit is here.',
  days_to_cancel: () => 'You can still change your mind. The clay comes after that.',
  job_to_open: () => 'Everything is there. The clay comes next.',
  clay_to_begin: () => 'Everything is there. The clay comes next.',
  in_the_studio: ({ at }) => `It is in the studio: ${at}.`,
  wall_to_look_at: () => 'It is finished. Before a day is found we look at its wall.',
  hanging_to_book: () => 'It is finished. Now we find the day on which it comes to you.',
  hanging_booked: ({ kind, on }, today) =>
    `It is finished, and will be ${kinds[kind]} on ${dayWord(on, today)}.`,
  to_hand_over: () => 'It is with you. The papers follow.',
  rest_owed: () => 'It is with you. A part of the price is still open.',
  handed_over: ({ handedOn }, today) => `It is yours since ${dayWord(handedOn, today)}.`,
  ended: ({ endedOn }, today) => `This work ended on ${dayWord(endedOn, today)}.`,
};

/**
 * Where the piece is, told to the collector: what they may expect, never whose fault it is.
 *
 * @example whereForCollector({ key: 'sketch_to_show', letter: 'A' }, …)
 *   // 'We are drawing. You will see the sketch here.'
 */
export function whereForCollector<Key extends WhereKey>(where: Where<Key>, today: Day): string {
  const sentence: Told<Key> = told[where.key];
  return sentence(where, today);
}
