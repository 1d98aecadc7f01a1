/** What a room brings with it: steam and grease, people below the piece, people passing by. */
export type PlaceNamed = 'steam' | 'below' | 'passage';

const words: Readonly<Record<PlaceNamed, RegExp>> = {
  steam: /\b(kitchen|range|stove|hob|backsplash|splashback|shower|bath|bathroom|sauna|steam)\b/i,
  below: /\b(over|above|behind)\b.{0,24}\b(bed|sofa|couch|bench|seat|table|crib|headboard)s?\b/i,
  passage: /\b(passage|passageway|corridor|hall|hallway|stair|stairs|stairwell|landing|entry)\b/i,
};

/**
 * What the words for a room name, so that nothing has to be asked twice.
 *
 * @source common practice: where steam, a shoulder or a sleeper is, other fixings are chosen
 * @example placesNamed('Over the bed') // below; 'Bedroom' names nothing
 */
export function placesNamed(room: string): ReadonlySet<PlaceNamed> {
  const names: readonly PlaceNamed[] = ['steam', 'below', 'passage'];
  return new Set(names.filter((name) => words[name].test(room)));
}
