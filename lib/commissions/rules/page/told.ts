import type { BandPeg, BandPegName } from '@/lib/commissions/rules/course/band';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import type { Where } from '@/lib/commissions/rules/course/where';
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

const kinds = { hanging: 'hung', delivery: 'delivered' } as const;

/**
 * Where the piece is, told to the collector: what they may expect, never whose fault it is.
 *
 * @example whereForCollector({ key: 'sketch_to_show', letter: 'A' }, …)
 *   // 'We are drawing. You will see the sketch here.'
 */
export function whereForCollector(where: Where, today: Day): string {
  switch (where.key) {
    case 'sketch_to_show':
      return 'We are drawing. You will see the sketch here.';
    case 'sketch_shown':
      return `Sketch ${where.letter} is waiting for your word.`;
    case 'colours_to_show':
      return 'We are firing tiles in your colours. You will have them in your hand.';
    case 'colours_shown':
      return `Colour tile ${where.number} is waiting for your word.`;
    case 'deposit_to_ask':
    case 'deposit_asked':
      return 'The clay can begin once the deposit is here.';
    case 'job_to_open':
    case 'clay_to_begin':
      return 'Everything is there. The clay comes next.';
    case 'in_the_studio':
      return `It is in the studio: ${where.at}.`;
    case 'hanging_to_book':
      return 'It is finished. Now we find the day on which it comes to you.';
    case 'hanging_booked':
      return `It is finished, and will be ${kinds[where.kind]} on ${dayWord(where.on, today)}.`;
    case 'to_hand_over':
      return 'It is with you. The papers follow.';
    case 'rest_owed':
      return 'It is with you. A part of the price is still open.';
    case 'handed_over':
      return `It is yours since ${dayWord(where.handedOn, today)}.`;
    case 'ended':
      return `This work ended on ${dayWord(where.endedOn, today)}.`;
    default:
      return 'We are preparing it with you.';
  }
}
