import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** The kinds of places, and how each is called. */
export const placeKinds = [
  { kind: 'gallery', words: 'in the gallery' },
  { kind: 'storeroom', words: 'a store room' },
  { kind: 'studio', words: 'in the studio' },
  { kind: 'fair', words: 'a fair' },
  { kind: 'consignee', words: 'another gallery' },
  { kind: 'on_approval', words: 'at a collector’s, to try' },
] as const;

/** One of the {@link placeKinds}. */
export type PlaceKind = (typeof placeKinds)[number]['kind'];

/** The kinds that a person may give a place; fairs, galleries and collectors bring their own. */
export const ownPlaceKinds = ['gallery', 'storeroom', 'studio'] as const;

/** How a kind of place is called. */
export function placeKindWords(kind: PlaceKind): string {
  return placeKinds.find((each) => each.kind === kind)?.words ?? '';
}

/** What is known of a place when it is renamed or closed. */
export type PlaceKnown = {
  name: string;
  kind: PlaceKind;
  isClosed: boolean;
  isCounter: boolean;
  /** Pieces that stand there. */
  pieces: number;
  /** A count of it that is neither booked nor left, by its number. */
  openCount: number | null;
};

/** Why a place was not added, renamed or closed. */
export type PlaceRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_place' }
  | { code: 'name_taken'; name: string }
  | { code: 'place_closed'; place: string }
  | { code: 'counters_place'; place: string }
  | { code: 'has_its_paper'; place: string }
  | { code: 'not_empty'; place: string; pieces: number }
  | { code: 'being_counted'; place: string; number: number };

/**
 * Whether a place may be closed.
 *
 * @returns refuses, in this order: closed already, the counter's own, a gallery's, a fair's or a
 *   collector's place (which closes with its paper), pieces still there, a count still open
 */
export function decideClosing(place: PlaceKnown): Result<true, PlaceRefusal> {
  const { name } = place;
  if (place.isClosed) return refuse({ code: 'place_closed', place: name });
  if (place.isCounter) return refuse({ code: 'counters_place', place: name });
  if (!ownPlaceKinds.some((kind) => kind === place.kind)) {
    return refuse({ code: 'has_its_paper', place: name });
  }
  if (place.pieces > 0) return refuse({ code: 'not_empty', place: name, pieces: place.pieces });
  const number = place.openCount;
  return number === null ? ok(true) : refuse({ code: 'being_counted', place: name, number });
}

/** Says in full sentences why a place was not added, renamed or closed. */
export function placeRefusalMessage(refusal: PlaceRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_place':
      return 'There is no such place. Look for it in the list of places.';
    case 'name_taken':
      return `There is a place called “${refusal.name}” already. Give this one another name.`;
    case 'place_closed':
      return `“${refusal.place}” is closed already.`;
    case 'counters_place':
      return `The counter sells from “${refusal.place}”, so it stays open.`;
    case 'has_its_paper':
      return `“${refusal.place}” belongs to its own paper and closes with it.`;
    case 'not_empty':
      return refusal.pieces === 1
        ? `One piece still stands at “${refusal.place}”. Move it first.`
        : `${refusal.pieces.toLocaleString('en-US')} pieces still stand at “${refusal.place}”. Move them first.`;
    case 'being_counted':
      return `Count ${refusal.number} of “${refusal.place}” is still open. Book it or leave it first.`;
  }
}

/**
 * A few words in a sentence; after six it says how many more there are.
 *
 * @example listedWords(['Wren', 'Ida']) // 'Wren and Ida'; nobody is 'somebody'
 */
export function listedWords(words: readonly string[]): string {
  const few = words.slice(0, 6);
  if (words.length > few.length) return `${few.join(', ')} and ${words.length - few.length} more`;
  const last = few.at(-1) ?? 'somebody';
  return few.length < 2 ? last : `${few.slice(0, -1).join(', ')} and ${last}`;
}
