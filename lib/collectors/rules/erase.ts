import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { list } from './words';

/** What keeps somebody from being struck out while it is open. */
export const openKinds = [
  ...(['commission', 'layaway', 'hold', 'approval', 'order', 'shop_order', 'slip'] as const),
  ...(['to_collect', 'day', 'credit', 'gallery', 'shipment'] as const),
] as const;

/** Something that is open in somebody's name: its numbers, or words where it has none. */
export type OpenThing =
  | { kind: (typeof openKinds)[number]; names: readonly string[] }
  /** Money, in cents: they owe it, or it is owed to them. */
  | { kind: 'they_owe' | 'we_owe'; cents: bigint };

const openWords: Record<(typeof openKinds)[number], (names: string, many: boolean) => string> = {
  commission: (names, many) =>
    `Commission ${names} ${many ? 'are' : 'is'} going on. Hand over or end what is open.`,
  layaway: (names, many) =>
    `Layaway ${names} ${many ? 'are' : 'is'} open. Let it be paid off, or end it.`,
  hold: (names, many) => `Hold ${names} ${many ? 'are' : 'is'} open. Let go of what is held.`,
  approval: (names) => `Approval ${names} is not back yet. Take back what is out.`,
  order: (names, many) =>
    `Special order ${names} ${many ? 'are' : 'is'} open. Hand it over, or call it off.`,
  shop_order: (names, many) =>
    `Shop order ${names} ${many ? 'are' : 'is'} open. Send it, or cancel it.`,
  slip: (names) => `A slip at the counter is in their name: ${names}. Sell it or throw it away.`,
  to_collect: (names) => `Of receipt ${names} pieces still hang here. Hand them out first.`,
  day: (names) => `The diary has a day with them: ${names}. Let it pass, or call it off.`,
  credit: (names) => `There is money on ${names}. Use it up first.`,
  shipment: (names, many) =>
    `Shipment ${names} ${many ? 'are' : 'is'} not over. Say that it arrived, or call it off.`,
  gallery: (names) => `Pieces may be with ${names} as another gallery. End it with them first.`,
};

/** Says in a full sentence what is open, and what to do about it. */
export function openSentence(open: OpenThing): string {
  if ('cents' in open) {
    const money = formatCents(open.cents);
    return open.kind === 'they_owe'
      ? `They owe ${money}. Take the money first.`
      : `${money} is owed to them. Give it back or pay it first.`;
  }
  return openWords[open.kind](list(open.names), open.names.length > 1);
}

/** Why somebody was not struck out. */
export type EraseRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_collector' }
  | { code: 'struck_out_already'; on: Day }
  | { code: 'name_does_not_fit' }
  | { code: 'still_open'; open: readonly OpenThing[] };

/** Says in full sentences why somebody was not struck out. */
export function eraseRefusalMessage(refusal: EraseRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Open the page again.';
    case 'unknown_collector':
      return 'Nobody by that name is in the address book. Look them up again.';
    case 'struck_out_already':
      return `They were struck out on ${formatDay(refusal.on, 'long')}. Nothing more is kept but what the books must keep.`;
    case 'name_does_not_fit':
      return 'That is not the name above. Type it as it is written there.';
    case 'still_open':
      return `Not while something is open. ${refusal.open.map(openSentence).join(' ')}`;
  }
}

/** Somebody of whom it is decided whether they are struck out. */
export type ToErase = Readonly<{
  name: string;
  erasedOn: Day | null;
  open: readonly OpenThing[];
}>;

/**
 * Whether what is known of somebody may be struck out.
 *
 * @returns refuses, in this order: struck out already, another name typed, something open
 * @example the name may be typed in other capitals
 */
export function mayErase(who: ToErase, typed: string): Result<true, EraseRefusal> {
  if (who.erasedOn !== null) return refuse({ code: 'struck_out_already', on: who.erasedOn });
  if (plainly(typed) !== plainly(who.name)) return refuse({ code: 'name_does_not_fit' });
  if (who.open.length > 0) return refuse({ code: 'still_open', open: who.open });
  return ok(true);
}

/** How somebody who was struck out is called from then on. */
export function erasedName(number: number): string {
  return `Erased collector ${number}`;
}

/**
 * The title of a work without the names of whom it was for.
 *
 * @param names of the person and of everybody of the household
 * @returns the title as it was, when no word of these names (of four letters or more) begins a word
 *   of it; else what it is called instead
 * @example titleWithout('Herons for the Olands', ['Marit Oland'], 'Commission 7') // 'Commission 7'
 */
export function titleWithout(title: string, names: readonly string[], instead: string): string {
  const words = wordsOf(title);
  const theirs = names.flatMap(wordsOf).filter((word) => word.length >= 4);
  const tells = theirs.some((name) => words.some((word) => word.startsWith(name)));
  return tells ? instead : title;
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

function plainly(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}
