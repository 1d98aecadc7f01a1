import type { WorkEntrySent } from '@/lib/installation/input/work/entry';
import { heldTicks, type Tick } from './ticks';

/** How an entry of a device stands: not sent yet, taken in, or refused with a sentence. */
export type KeptStanding = 'waiting' | 'sent' | 'refused';

/** An entry as a device keeps it. */
export type KeptEntry = {
  readonly entry: WorkEntrySent;
  readonly standing: KeptStanding;
  /** Why it was refused; empty otherwise. */
  readonly sentence: string;
};

/** What the gallery knew of a day when the page was drawn. */
export type DayKnown = {
  readonly ticks: readonly Tick[];
  readonly weightG: number | null;
  readonly isWeighed: boolean;
  readonly hasFixingsPicture: boolean;
  readonly hasPictureInPlace: boolean;
};

/** A day as it stands with everything that the device has kept. */
export type DayHere = Omit<DayKnown, 'ticks'> & {
  readonly held: ReadonlyMap<string, Tick>;
  readonly notes: readonly Tick[];
  /** The keys of what was not sent yet. */
  readonly waiting: ReadonlySet<string>;
};

/**
 * The day with what the device kept laid over what the gallery knew: what was refused does not
 * count, and what the gallery knows already counts as the gallery dated it.
 */
export function dayHere(known: DayKnown, kept: readonly KeptEntry[]): DayHere {
  const there = new Set(known.ticks.map(({ id }) => id));
  const counting = kept.filter(({ standing }) => standing !== 'refused');
  const here = counting.map(({ entry }) => entry).filter(({ id }) => !there.has(id));
  const ticks = [...known.ticks, ...here.flatMap(tickOf)];
  const weighed = here.filter((entry) => entry.did === 'weigh').at(-1);
  const has = (of: 'fixings' | 'in_place') =>
    here.some((entry) => entry.did === 'picture' && entry.of === of);
  return {
    held: heldTicks(ticks),
    notes: ticks.filter(({ item }) => item === 'note'),
    weightG: weighed?.weightG ?? known.weightG,
    isWeighed: known.isWeighed || weighed !== undefined,
    hasFixingsPicture: known.hasFixingsPicture || has('fixings'),
    hasPictureInPlace: known.hasPictureInPlace || has('in_place'),
    waiting: new Set(
      kept.filter(({ standing }) => standing === 'waiting').map(({ entry }) => keyOf(entry)),
    ),
  };
}

function tickOf(entry: WorkEntrySent): Tick[] {
  if (entry.did !== 'tick') return [];
  const { id, item, isDone, words = '' } = entry;
  return [{ ...{ id, item, isDone, words }, tickedAt: new Date(entry.at), receivedAt: null }];
}

/** Under what an entry is marked as not sent yet: the item of a tick, or what it is. */
function keyOf(entry: WorkEntrySent): string {
  if (entry.did === 'tick') return entry.item === 'note' ? entry.id : entry.item;
  return entry.did === 'picture' ? entry.of : entry.did;
}

/** What a kept entry is, in a few words, for the list of what was not sent yet. */
export function entryWords(entry: WorkEntrySent, itemWords: ReadonlyMap<string, string>): string {
  switch (entry.did) {
    case 'tick':
      return tickWords(entry, itemWords);
    case 'weigh':
      return 'The weight from the scale';
    case 'picture':
      return entry.of === 'fixings' ? 'A picture of the fixings' : 'A picture in place';
    case 'snag':
      return `To be put right: ${entry.words}`;
    case 'sign':
      return `The signature of ${entry.signedName}`;
  }
}

function tickWords(
  { item, isDone, words }: Extract<WorkEntrySent, { did: 'tick' }>,
  itemWords: ReadonlyMap<string, string>,
): string {
  const said = itemWords.get(item);
  if (said === undefined) return `Noted: ${words ?? ''}`;
  return isDone ? said : `Not done after all: ${said}`;
}
