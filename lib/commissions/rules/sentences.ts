import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Currency } from '@/lib/money/rules';
import { piecesWords } from '@/lib/studio/rules/words';
import type { Standing, WaitsOn, Where } from './standing';

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
  const since = dayWord(standing.since, telling.today);
  if (where.key === 'in_the_studio') {
    return `In the studio since ${since}: ${standsAt(where)}.`;
  }
  if (waitsOn === 'nobody') return nothingToDo(where, telling);
  return `Waiting for the ${waitsOn} since ${since}: ${toDo(where, telling)}.`;
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

function standsAt(where: Extract<Where, { key: 'in_the_studio' }>): string {
  const all = where.pieces === where.ofPieces;
  const pieces = all
    ? piecesWords(where.pieces)
    : `${where.pieces} of ${piecesWords(where.ofPieces)}`;
  return `${pieces} at ${where.at}`;
}

function toDo(where: Where, telling: Telling): string {
  switch (where.key) {
    case 'to_agree':
      return 'agree on the price and the day';
    case 'sketch_to_show':
      return `draw and show sketch ${where.letter}`;
    case 'sketch_shown':
      return `approve sketch ${where.letter}`;
    case 'colours_to_show':
      return `make and show colour tile ${where.number}`;
    case 'colours_shown':
      return `approve colour tile ${where.number}`;
    case 'deposit_to_ask':
      return `ask for the deposit${amount(where.leftCents, telling)}`;
    case 'deposit_asked':
      return `pay the deposit${amount(where.leftCents, telling)}`;
    case 'job_to_open':
      return 'open the job, so that the making can begin';
    case 'clay_to_begin':
      return `begin with the clay of job ${where.jobNumber}`;
    case 'hanging_to_book':
      return 'it is finished, book the hanging';
    case 'to_hand_over':
      return `it was to be ${kindDone[where.kind]}, hand it over`;
    case 'rest_owed':
      return `pay the rest${amount(where.leftCents, telling)}`;
    case 'in_the_studio':
    case 'hanging_booked':
    case 'handed_over':
    case 'ended':
      return '';
  }
}

const kindDone = { hanging: 'hung', delivery: 'delivered' } as const;

function nothingToDo(where: Where, { today }: Telling): string {
  switch (where.key) {
    case 'hanging_booked':
      return `Finished, and to be ${kindDone[where.kind]} on ${dayWord(where.on, today)}.`;
    case 'handed_over':
      return `Handed over on ${dayWord(where.handedOn, today)}, and paid.`;
    case 'ended':
      return `Ended early on ${dayWord(where.endedOn, today)}: ${withoutFullStop(where.why)}.`;
    default:
      return 'There is nothing to do.';
  }
}

function withoutFullStop(sentence: string): string {
  return sentence.trim().replace(/[.\s]+$/, '');
}

function amount(cents: bigint, { seesMoney, currency }: Telling): string {
  return seesMoney ? `, ${formatCents(cents, { currency })}` : '';
}

/** What the button of the next thing says; null when there is nothing left to do. */
export function nextWords(where: Where): string | null {
  switch (where.key) {
    case 'to_agree':
      return 'Write down what was agreed';
    case 'sketch_to_show':
      return 'Show a sketch';
    case 'sketch_shown':
      return `Write down the yes to sketch ${where.letter}`;
    case 'colours_to_show':
      return 'Show a colour tile';
    case 'colours_shown':
      return `Write down the yes to tile ${where.number}`;
    case 'deposit_to_ask':
      return 'Ask for the deposit';
    case 'deposit_asked':
    case 'rest_owed':
      return 'Take a payment';
    case 'job_to_open':
      return 'Open the job';
    case 'clay_to_begin':
    case 'in_the_studio':
      return `Go to job ${where.jobNumber}`;
    case 'hanging_to_book':
      return 'Book the hanging';
    case 'hanging_booked':
      return 'Look at the day';
    case 'to_hand_over':
      return 'Hand it over';
    case 'handed_over':
    case 'ended':
      return null;
  }
}
