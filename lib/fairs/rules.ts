import { formatDay, type Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Why something about a fair was not written down. */
export type FairRefusal =
  | { code: 'unknown_fair' }
  | { code: 'fair_is_closed'; name: string }
  | { code: 'unknown_tax_place' }
  | { code: 'unknown_place' }
  | { code: 'fair_is_known'; name: string; on: Day }
  | { code: 'unknown_code'; typed: string }
  | { code: 'unknown_piece' }
  | { code: 'which_number'; title: string; sku: string; here: readonly number[] }
  | { code: 'number_elsewhere'; title: string; sku: string; number: number }
  | { code: 'not_enough'; title: string; sku: string; wanted: number; free: number; held: number }
  | { code: 'fair_has_changed' }
  | { code: 'counted_more'; row: string; title: string; there: number; counted: number };

/** Says in full sentences why something about a fair was not written down. */
export function fairRefusalMessage(refusal: FairRefusal): string {
  if (isPlain(refusal)) return plainMessages[refusal.code];
  switch (refusal.code) {
    case 'fair_is_closed':
      return `${refusal.name} is counted back in and closed. Nothing stands there any more.`;
    case 'fair_is_known':
      return `${refusal.name} on ${formatDay(refusal.on, 'short')} is in the book already.`;
    case 'unknown_code':
      return `${refusal.typed} is not in the catalogue. Look at the tag once more.`;
    case 'which_number':
      return whichNumberMessage(refusal);
    case 'number_elsewhere':
      return `Number ${refusal.number} of ${refusal.title} (${refusal.sku}) does not stand there.`;
    case 'not_enough':
      return notEnoughMessage(refusal);
    case 'counted_more':
      return `${refusal.counted} of ${refusal.title} are accounted for, and only ${refusal.there} stand there.`;
  }
}

const plainMessages = {
  unknown_fair: 'That fair is not in the book.',
  unknown_tax_place: 'Choose the place whose sales tax holds at the fair.',
  unknown_place: 'Choose a place of ours that is open.',
  unknown_piece: 'That piece is not on the take list.',
  fair_has_changed:
    'Something was sold or moved at this fair since the page was opened. Look at the list once ' +
    'more; nothing was written.',
} as const;

type PlainRefusal = Extract<FairRefusal, { code: keyof typeof plainMessages }>;

function isPlain(refusal: FairRefusal): refusal is PlainRefusal {
  return refusal.code in plainMessages;
}

function whichNumberMessage(refusal: Extract<FairRefusal, { code: 'which_number' }>): string {
  const { title, sku, here } = refusal;
  if (here.length === 0) return `No numbered piece of ${title} (${sku}) stands there.`;
  const numbers = here.slice(0, 12).join(', ');
  return (
    `${title} is an edition: write which number goes, such as ${sku}#${here[0] ?? 1}. ` +
    `There ${here.length === 1 ? 'is' : 'are'} ${numbers}.`
  );
}

function notEnoughMessage(refusal: Extract<FairRefusal, { code: 'not_enough' }>): string {
  const { title, sku, wanted, free, held } = refusal;
  const are = free === 0 ? 'is none' : free === 1 ? 'is one' : `are ${free}`;
  const kept = held === 0 ? '' : ` (${held} more ${held === 1 ? 'is' : 'are'} held for somebody)`;
  return `${wanted} of ${title} (${sku}) should go, and there ${are} free to take${kept}.`;
}

/** The most hours that one fair takes. */
const hoursMost = 1_000;

/** Why typed hours were not taken. */
export type HoursRefusal = { code: 'not_hours' } | { code: 'too_many_hours'; most: number };

/**
 * Reads hours worked as they are typed: `16`, `16.5`, `16:30`, nothing for none yet.
 *
 * @returns whole minutes, half up; refuses what is no time, then more than 1,000 hours
 * @example readHours('16.25') // 975 minutes
 */
export function readHours(text: string): Result<number, HoursRefusal> {
  const typed = text.trim();
  if (typed === '') return ok(0);
  const match = /^(\d{1,5})(?::([0-5]\d)|[.,](\d{1,3}))?$/.exec(typed);
  if (!match) return refuse({ code: 'not_hours' });
  const [, hours = '0', minutes = '0', part = '0'] = match;
  const inPart = Math.round((Number(part) * 60) / 10 ** part.length);
  const all = Number(hours) * 60 + Number(minutes) + inPart;
  return all > hoursMost * 60 ? refuse({ code: 'too_many_hours', most: hoursMost }) : ok(all);
}

/** Says in a full sentence why typed hours were not taken. */
export function hoursRefusalMessage(refusal: HoursRefusal): string {
  if (refusal.code === 'not_hours') return 'Write the hours, such as 16, 16.5 or 16:30.';
  return `At most ${refusal.most} hours.`;
}

/**
 * Minutes as hours, as they are typed and read.
 *
 * @example hoursText(975) // '16:15'; whole hours stand alone, '16'
 */
export function hoursText(minutes: number): string {
  const over = minutes % 60;
  const hours = Math.floor(minutes / 60);
  return over === 0 ? String(hours) : `${hours}:${String(over).padStart(2, '0')}`;
}

/** The longest name of a place. */
const placeNameMost = 120;

/**
 * The name of a fair's place, which no other place has: the fair's own, its town and first day.
 *
 * @example fairPlaceName('Rain Market', 'Cedar Reach', '2026-11-14')
 *   // 'Rain Market, Cedar Reach, 14 Nov 2026'
 */
export function fairPlaceName(name: string, town: string, fromOn: Day): string {
  const day = formatDay(fromOn, 'short');
  const words = [name, town].filter((word) => word !== '').join(', ');
  return `${words.slice(0, placeNameMost - day.length - 2)}, ${day}`;
}
