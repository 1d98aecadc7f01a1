/** What can be remembered of the making and the hanging. */
export const progressKinds = [
  'picture',
  'note',
  'weight',
  'firing',
  'glaze_batch',
  'fixing',
] as const;

/** One of the {@link progressKinds}. */
export type ProgressKind = (typeof progressKinds)[number];

/** Each as one chooses it. */
export const progressWords: Readonly<Record<ProgressKind, string>> = {
  picture: 'a picture',
  note: 'a note',
  weight: 'a weight',
  firing: 'a firing',
  glaze_batch: 'a bucket of glaze',
  fixing: 'a fixing, before it is covered',
};

/**
 * The moments of which a picture is worth keeping: later nobody can look any more.
 *
 * @source common practice
 */
export const momentsToKeep: readonly string[] = [
  'the clay, cut and numbered',
  'the relief, modelled and wet',
  'out of the bisque',
  'glazed, before the glaze firing',
  'laid out whole, before it is glued',
  'the fixings in the wall, before they are covered',
];

/**
 * What was remembered by the name one finds it under: the words, or the firing or bucket that was
 * written down without any.
 *
 * @example keptTitle({ kind: 'firing', words: 'a firing', firing: 'glaze 41', batch: null }) // 'Firing glaze 41'
 */
export function keptTitle(kept: {
  kind: ProgressKind;
  words: string;
  firing: string;
  batch: { number: string; glaze: string } | null;
}): string {
  const { kind, words, firing, batch } = kept;
  if (words !== progressWords[kind]) return words;
  if (batch) return `Bucket ${batch.number}, ${batch.glaze}`;
  return firing === '' ? words : `Firing ${firing}`;
}

/**
 * What is known of it besides its title.
 *
 * @param weight as the gallery says it; empty for none
 */
export function keptFacts(
  { words, firing, batch }: Parameters<typeof keptTitle>[0],
  weight: string,
): string[] {
  const isIn = (each: string) => words.includes(each);
  return [
    weight,
    firing === '' || isIn(firing) ? '' : `firing ${firing}`,
    batch && !isIn(batch.number) ? `bucket ${batch.number}, ${batch.glaze}` : '',
  ].filter(Boolean);
}
