import type { Day } from '@/lib/dates/rules';

/** What somebody may say yes or no to; text messages and pictures need a yes of their own. */
export const consentKinds = ['letter', 'email', 'text', 'call', 'pictures'] as const;

/** One of the ways to write to somebody, or that pictures of the piece in its place are shown. */
export type ConsentKind = (typeof consentKinds)[number];

/** The kinds as they are said. */
export const consentKindWords: Record<ConsentKind, string> = {
  letter: 'Letters by post',
  email: 'Mail',
  text: 'Text messages',
  call: 'Calls',
  pictures: 'Pictures of the piece in its place',
};

/** How a yes or a no reached the gallery; a short list, so that no name stands in it. */
export const consentHows = ['in_person', 'call', 'mail', 'letter', 'text', 'form', 'fair'] as const;

/** The ways as they are said. */
export const consentHowWords: Record<(typeof consentHows)[number], string> = {
  in_person: 'in the gallery',
  call: 'on the telephone',
  mail: 'by mail',
  letter: 'in a letter',
  text: 'in a text message',
  form: 'on a form they signed',
  fair: 'at a fair',
};

/** Said in the place of a way that is not of the list: when everything was struck out. */
export const struckOutHow = 'struck_out';

/** How it was said, in words; what is not of the list is shown as it was written. */
export function howWords(how: string): string {
  if (how === struckOutHow) return 'when what was known of them was struck out';
  return how in consentHowWords ? consentHowWords[how as keyof typeof consentHowWords] : how;
}

/** A yes or a no, as the rules below look at it. */
export type ConsentSaid = Readonly<{
  to: ConsentKind;
  given: boolean;
  saidOn: Day;
  /** When it was written down. */
  at: Date;
  /** The entry of the address book that it was said under: one name may have been two. */
  under: string;
  /** Written down after the two names were found to be one. */
  isAskedAnew: boolean;
}>;

/**
 * What holds of a kind: the last that was said. Of two names that are one, the words are laid
 * together by the day they were said on, so that a no under either name ends an earlier yes under
 * the other, and a yes counts against a no only when it was said on a later day. On one and the
 * same day the stricter holds, until they are asked anew.
 *
 * @returns null when nothing was said
 * @example a no under one name and a yes under the other on the same day // the no
 */
export function lastSaid<Said extends ConsentSaid>(
  consents: readonly Said[],
  kind: ConsentKind,
): Said | null {
  const ofKind = consents.filter(({ to }) => to === kind);
  const lastOn = ofKind.reduce((on, { saidOn }) => (saidOn > on ? saidOn : on), '');
  const thatDay = ofKind.filter(({ saidOn }) => saidOn === lastOn);
  const anew = thatDay.filter(({ isAskedAnew }) => isAskedAnew);
  const last = lastOfEach(anew.length > 0 ? anew : thatDay);
  return last.find(({ given }) => !given) ?? last.at(-1) ?? null;
}

/**
 * Whether somebody may be written to, called, or their pictures shown. Nothing said is a no.
 *
 * @example mayWriteTo([], 'email') // false
 */
export function mayWriteTo(consents: readonly ConsentSaid[], kind: ConsentKind): boolean {
  return lastSaid(consents, kind)?.given ?? false;
}

/** Whether a no holds: stricter than nothing said, and obeyed by letters about their own orders too. */
export function saidNo(consents: readonly ConsentSaid[], kind: ConsentKind): boolean {
  return lastSaid(consents, kind)?.given === false;
}

/** The last word under each name, in the order in which they were written down. */
function lastOfEach<Said extends ConsentSaid>(consents: readonly Said[]): Said[] {
  const byName = new Map<string, Said>();
  for (const each of consents.toSorted(byWriting)) byName.set(each.under, each);
  return [...byName.values()].toSorted(byWriting);
}

/** Of two written down at the same instant the no comes last, so that it holds. */
function byWriting(one: ConsentSaid, other: ConsentSaid): number {
  return one.at.getTime() - other.at.getTime() || Number(other.given) - Number(one.given);
}
