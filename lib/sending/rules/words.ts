/** How something gets to where it belongs. */
export type SentHow = 'by_us' | 'carrier' | 'fetched';

/** The three ways, as a form offers them. */
export const sentHows: readonly { how: SentHow; words: string; hint: string }[] = [
  { how: 'carrier', words: 'By a carrier', hint: 'A parcel, freight or art handlers.' },
  { how: 'by_us', words: 'We bring it', hint: 'In our own van.' },
  { how: 'fetched', words: 'It is fetched', hint: 'They come for it.' },
];

/** A way in words: `by a carrier`. */
export const howWords: Readonly<Record<SentHow, string>> = {
  by_us: 'we bring it',
  carrier: 'by a carrier',
  fetched: 'it is fetched',
};

/** What may happen to a shipment. */
export type EventKind = 'packed' | 'sent' | 'arrived' | 'fetched' | 'called_off' | 'noted';

/** What happened, as the history tells it. */
export const eventWords: Readonly<Record<EventKind, string>> = {
  packed: 'packed',
  sent: 'sent',
  arrived: 'arrived',
  fetched: 'fetched',
  called_off: 'called off',
  noted: 'noted',
};

/** Where a shipment stands. */
export type Stage = 'to_pack' | 'packed' | 'on_the_way' | 'arrived' | 'fetched' | 'called_off';

/** Where it stands, in words. */
export const stageWords: Readonly<Record<Stage, string>> = {
  to_pack: 'to be packed',
  packed: 'packed',
  on_the_way: 'on the way',
  arrived: 'arrived',
  fetched: 'fetched',
  called_off: 'called off',
};
