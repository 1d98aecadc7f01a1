import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';

/** At how much of its life, in a hundred, a mould is spoken of. */
export const wearingPercent = 80;
/** The longest life in casts that a mould can be given. */
export const lifeMost = 5_000;

/** What a mould is for, in the order in which one is made from the other. */
export const mouldKinds = ['model', 'master', 'working'] as const;
/** One of {@link mouldKinds}. */
export type MouldKind = (typeof mouldKinds)[number];

/** What each kind of mould is, for a form. */
export const mouldKindWords: Readonly<Record<MouldKind, { name: string; hint: string }>> = {
  model: { name: 'model', hint: 'the shape itself, in clay, plaster or rubber' },
  master: { name: 'master mould', hint: 'working moulds are made from it' },
  working: { name: 'working mould', hint: 'pieces are cast or pressed from it' },
};

/** How the face of a mould looks, from sharp to broken. */
export const mouldFaces = ['sharp', 'softening', 'worn', 'broken'] as const;
/** One of {@link mouldFaces}. */
export type MouldFace = (typeof mouldFaces)[number];

/** What each look of a face means. */
export const mouldFaceWords: Readonly<Record<MouldFace, string>> = {
  sharp: 'every line is there',
  softening: 'the finest lines go first',
  worn: 'nothing more is promised from it',
  broken: 'nothing is cast from it any more',
};

/** A mould as it is counted: casts it is trusted for, casts it had before, casts since. */
export type MouldCounts = {
  kind: MouldKind;
  lifeCasts: number;
  begunWith: number;
  castsSince: number;
  retiredOn: Day | null;
  /** How its face looked last; null while nobody looked. */
  face: MouldFace | null;
};

/** How a mould stands; casts left are those that may be promised, and never below nought. */
export type MouldStanding = {
  soFar: number;
  left: number;
  wear: 'good' | 'wearing' | 'softening' | 'worn' | 'worn_face' | 'broken' | 'retired' | 'not_cast';
};

/**
 * How many casts a mould has given and may still be promised, and whether it must be spoken of.
 *
 * One that is retired, broken or worn by its look, and a model or a master, has none to promise,
 * however few it gave.
 *
 * @source common practice: sharp relief holds for 50 to 100 casts, hollow forms for 100 to 150;
 *   the life is the studio's own number, and a look at the face goes before it
 * @example mouldStanding({ kind: 'working', lifeCasts: 100, begunWith: 60, castsSince: 20,
 *   retiredOn: null, face: null }) // { soFar: 80, left: 20, wear: 'wearing' }
 */
export function mouldStanding(mould: MouldCounts): MouldStanding {
  const soFar = mould.begunWith + mould.castsSince;
  const wear = wearOf(mould, soFar);
  const isPromised = wear === 'good' || wear === 'wearing' || wear === 'softening';
  return { soFar, left: isPromised ? mould.lifeCasts - soFar : 0, wear };
}

function wearOf(mould: MouldCounts, soFar: number): MouldStanding['wear'] {
  if (mould.retiredOn !== null) return 'retired';
  if (mould.face === 'broken') return 'broken';
  if (mould.kind !== 'working') return 'not_cast';
  if (mould.face === 'worn') return 'worn_face';
  if (soFar >= mould.lifeCasts) return 'worn';
  if (mould.face === 'softening') return 'softening';
  return soFar * 100 >= mould.lifeCasts * wearingPercent ? 'wearing' : 'good';
}

const warnings: Readonly<Record<MouldStanding['wear'], (left: number) => string>> = {
  good: () => '',
  wearing: (left) => `Wearing: ${castsWords(left)} left. Make the next one from its model in time.`,
  softening: (left) =>
    `Its face is softening: hardly all of the ${castsWords(left)} left will be sharp. Make the next one now.`,
  worn: () => 'It has given all the casts that it is trusted for. Look at the edges of each cast.',
  worn_face: () => 'Its face is worn: nothing more is promised from it.',
  broken: () => 'It is broken: nothing is cast from it any more.',
  retired: () => 'Retired: nothing is cast from it any more.',
  not_cast: () => 'Moulds are made from it; pieces are not.',
};

/**
 * What is to be said of a mould; empty while nothing is.
 *
 * @example mouldWarning({ soFar: 80, left: 20, wear: 'wearing' }) // 'Wearing: 20 casts left.'
 */
export function mouldWarning({ left, wear }: MouldStanding): string {
  return warnings[wear](left);
}

/**
 * Whether one mould can be made from another: a master from a model, a working mould from either,
 * and a model from a model or a master, as a rubber one is poured.
 *
 * @source common practice: model, master mould, working mould
 */
export function comesFrom(own: MouldKind, from: MouldKind): boolean {
  if (from === 'working') return false;
  return mouldKinds.indexOf(from) < mouldKinds.indexOf(own) || own === 'model';
}

/** `1 cast`, `31 casts`. */
export function castsWords(casts: number): string {
  return casts === 1 ? '1 cast' : `${casts} casts`;
}

/**
 * What an edition says of the mould it comes from, when that will not last.
 *
 * @param edition its size with proofs, and how many numbers have come
 * @returns empty when the mould lasts; spare casts for losses are the studio's to add
 * @example editionOnMould({ pieces: 50, came: 0 }, 31)
 *   // 'An edition of 50 with 50 still to come, from a mould with 31 casts left.'
 */
export function editionOnMould(
  edition: { pieces: number; came: number },
  castsLeft: number,
): string {
  const toCome = Math.max(0, edition.pieces - edition.came);
  if (toCome <= castsLeft) return '';
  return (
    `An edition of ${edition.pieces} with ${toCome} still to come, ` +
    `from a mould with ${castsWords(castsLeft)} left.`
  );
}

/** Why a mould was not written down or used. */
export type MouldRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_design' }
  | { code: 'mould_code_taken' }
  | { code: 'unknown_mould' }
  | { code: 'retired_already'; retiredOn: Day }
  | { code: 'day_to_come' }
  | { code: 'before_it_was_made'; madeOn: Day }
  | { code: 'unknown_source' }
  | { code: 'source_of_another_design'; from: string }
  | { code: 'not_made_from_that'; from: string }
  | { code: 'made_from_itself'; from: string }
  | { code: 'not_cast_from'; kind: MouldKind }
  | { code: 'mould_is_broken' };

type RefusalOf<Code extends MouldRefusal['code']> = Extract<MouldRefusal, { code: Code }>;
type Sentences = {
  readonly [Code in MouldRefusal['code']]: (refusal: RefusalOf<Code>) => string;
};

const sentences: Sentences = {
  not_allowed: notAllowedMessage,
  key_used_for_something_else: () =>
    'This page was sent before with something else in it. Load it again, please.',
  unknown_design: () => 'That design is not in the catalogue.',
  mould_code_taken: () => 'Another mould has this code. Give it a number of its own.',
  unknown_mould: () => 'That mould is not in the list.',
  retired_already: ({ retiredOn }) => `That mould was retired on ${formatDay(retiredOn, 'short')}.`,
  day_to_come: () => 'That day is still to come.',
  before_it_was_made: ({ madeOn }) =>
    `The mould was made on ${formatDay(madeOn, 'short')}, after that day.`,
  unknown_source: () => 'What it was made from is not in the list. Choose it once more.',
  source_of_another_design: ({ from }) =>
    `${from} gives another design. Choose one of this design.`,
  not_made_from_that: ({ from }) =>
    `It cannot be made from ${from}: a master comes from a model, a working mould from either.`,
  made_from_itself: ({ from }) => `${from} was itself made from this one. Look at both once more.`,
  not_cast_from: ({ kind }) =>
    `That is a ${mouldKindWords[kind].name}: moulds are made from it. Choose the working mould.`,
  mould_is_broken: () =>
    'That mould is broken. If it was mended, look at its face first and write that down.',
};

/** Says in a full sentence why a mould was not written down or used. */
export function mouldRefusalMessage(refusal: MouldRefusal): string {
  return say(refusal);
}

function say<Code extends MouldRefusal['code']>(refusal: RefusalOf<Code>): string {
  const sentence: Sentences[Code] = sentences[refusal.code];
  return sentence(refusal);
}
