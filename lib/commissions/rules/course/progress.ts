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
