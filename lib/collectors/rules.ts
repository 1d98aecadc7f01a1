import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';

/** What kind of collector someone is. */
export const collectorKinds = ['person', 'household', 'designer', 'business'] as const;

/** A person, the people of one house, someone who brings clients, or a firm. */
export type CollectorKind = (typeof collectorKinds)[number];

/** The kinds as they are said. */
export const collectorKindWords: Record<CollectorKind, string> = {
  person: 'a person',
  household: 'a household',
  designer: 'a designer',
  business: 'a business',
};

/** How a collector is reached; null is "not known yet". */
export type Reach = {
  readonly email: string | null;
  readonly phone: string | null;
  readonly street: string | null;
  readonly city: string | null;
  readonly state: string | null;
  readonly postcode: string | null;
};

/** Why a collector was not written down. */
export type CollectorRefusal = { code: 'unknown_collector' };

/** What a command may answer besides: the person may not, or the form's key was used before. */
export type CollectorNo = CollectorRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/** Says in a full sentence why a collector was not written down. */
export function collectorRefusalMessage(refusal: CollectorNo): string {
  switch (refusal.code) {
    case 'unknown_collector':
      return 'Nobody by that name is in the address book. Find them by a few letters, or add them.';
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Open the page again.';
  }
}

/**
 * A postal address in one line, of the parts that are known.
 *
 * @returns null when no part is known
 * @example addressLine with only a city and a state // 'Fernhollow, WA'
 */
export function addressLine(reach: Omit<Reach, 'email' | 'phone'>): string | null {
  const region = [reach.state, reach.postcode].filter((part) => part !== null).join(' ');
  const parts = [reach.street, reach.city, region === '' ? null : region];
  const line = parts.filter((part) => part !== null).join(', ');
  return line === '' ? null : line;
}

/** The shortest way to say how someone is reached: telephone first, then mail. Null for neither. */
export function shortReach(reach: Pick<Reach, 'email' | 'phone'>): string | null {
  return reach.phone ?? reach.email;
}

/**
 * The letters to look for as they were typed: spaces drawn together, at most sixty of them.
 *
 * @example lettersOf('  Marit   Oland ') // 'Marit Oland'
 */
export function lettersOf(typed: string): string {
  return typed.trim().replace(/\s+/g, ' ').slice(0, 60);
}
