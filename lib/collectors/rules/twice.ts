/** Somebody of the address book, with every name and way to reach them that is known. */
export type Known = Readonly<{
  id: string;
  /** Their own name, the people of the household, and the names of those merged into them. */
  names: readonly string[];
  emails: readonly string[];
  phones: readonly string[];
  places: readonly Readonly<{ postcode: string | null; city: string | null }>[];
}>;

/** Why two are likely the same. */
export type Likeness =
  | { kind: 'email'; email: string }
  | { kind: 'phone'; phone: string }
  | { kind: 'name'; one: string; other: string; place: string };

/** Two that are likely the same, and why; `one` was there before `other`. */
export type LikelyPair = Readonly<{
  oneId: string;
  otherId: string;
  why: readonly Likeness[];
}>;

/** The fewest figures by which a telephone is taken for one, and how many of the last are compared. */
const figuresLeast = 7;
const figuresCompared = 10;
/** Beyond so many with one mail address or telephone it is nobody's own. */
const sharedMost = 40;

/**
 * The pairs that are likely the same: by mail, by telephone, or by name and place.
 *
 * @param everybody in the order in which they were added; that order is kept within a pair
 * @returns those with more reasons first
 * @example two with the same telephone written differently are one pair with one reason
 */
export function likelyPairs(everybody: readonly Known[]): LikelyPair[] {
  const found = new Map<string, { oneId: string; otherId: string; why: Likeness[] }>();
  const rank = new Map(everybody.map(({ id }, at) => [id, at]));
  const names = new Map(everybody.map((known) => [known, known.names.map(bareName)]));
  const add = (first: Known, second: Known, why: Likeness) => {
    const isInOrder = (rank.get(first.id) ?? 0) < (rank.get(second.id) ?? 0);
    const [one, other] = isInOrder ? [first, second] : [second, first];
    const key = `${one.id} ${other.id}`;
    const pair = found.get(key) ?? { oneId: one.id, otherId: other.id, why: [] };
    if (!pair.why.some(({ kind }) => kind === why.kind)) pair.why.push(why);
    found.set(key, pair);
  };
  for (const { key: email, who } of sharing(everybody, mailsOf)) {
    eachTwo(who, (one, other) => add(one, other, { kind: 'email', email }));
  }
  for (const { key: phone, who } of sharing(everybody, phonesOf)) {
    eachTwo(who, (one, other) => add(one, other, { kind: 'phone', phone }));
  }
  for (const { key: place, who } of sharing(everybody, placesOf)) {
    everyTwo(who, (one, other) => {
      const alike = alikeNames(names.get(one) ?? [], names.get(other) ?? []);
      if (alike) add(one, other, { kind: 'name', ...alike, place: place.slice(2) });
    });
  }
  return [...found.values()].sort((a, b) => b.why.length - a.why.length);
}

/** Says why two are likely the same. */
export function likenessWords(why: Likeness): string {
  switch (why.kind) {
    case 'email':
      return `The same mail address, ${why.email}.`;
    case 'phone':
      return `The same telephone, which ends in ${why.phone.slice(-4)}.`;
    case 'name':
      return why.one === why.other
        ? `The same name, and both in ${why.place}.`
        : `“${why.one}” and “${why.other}” are written nearly alike, and both are in ${why.place}.`;
  }
}

/**
 * Whether two names are one but for a slip of the pen: capitals, accents, marks and the order of
 * the words do not count; one letter may be wrong, missing, too many or swapped with the next, in
 * long names two.
 *
 * @example isNearlySame('Marit Oland', 'Oland, Marrit') // true
 */
export function isNearlySame(one: string, other: string): boolean {
  return isAlike(bareName(one), bareName(other));
}

/** A telephone as it is compared: its last ten figures; null for fewer than seven. */
export function figuresOf(phone: string): string | null {
  const figures = phone.replace(/\D/g, '');
  return figures.length < figuresLeast ? null : figures.slice(-figuresCompared);
}

/** A name as it is compared, and which letters are in it, as bits. */
type BareName = Readonly<{ name: string; bare: string; letters: number }>;

function bareName(name: string): BareName {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const words = plain.split(/[^\p{L}\p{N}]+/u);
  const bare = words
    .filter((word) => !['', 'the', 'and'].includes(word))
    .sort()
    .join(' ');
  const letters = Array.from(bare).reduce(
    (bits, each) => bits | (1 << (each.charCodeAt(0) & 31)),
    0,
  );
  return { name, bare, letters };
}

function isAlike(one: BareName, other: BareName): boolean {
  const shorter = Math.min(one.bare.length, other.bare.length);
  const slipsMost = shorter < 5 ? 0 : shorter < 12 ? 1 : 2;
  if (Math.abs(one.bare.length - other.bare.length) > slipsMost) return false;
  if (one.bare === other.bare) return one.bare !== '';
  // A slip takes away at most one letter and brings at most one.
  if (bitsOf(one.letters ^ other.letters) > 2 * slipsMost) return false;
  return isWithin(one.bare, other.bare, slipsMost);
}

function bitsOf(number: number): number {
  let bits = 0;
  for (let rest = number; rest !== 0; rest &= rest - 1) bits += 1;
  return bits;
}

/** Whether at most so many letters are wrong, missing, too many, or swapped with the next. */
function isWithin(one: string, other: string, slips: number): boolean {
  const at = firstDifference(one, other);
  const [rest, otherRest] = [one.slice(at), other.slice(at)];
  if (rest === '' || otherRest === '') return rest.length + otherRest.length <= slips;
  if (slips === 0) return false;
  const isSwapped = rest[0] === otherRest[1] && rest[1] === otherRest[0];
  return (
    isWithin(rest.slice(1), otherRest.slice(1), slips - 1) ||
    isWithin(rest.slice(1), otherRest, slips - 1) ||
    isWithin(rest, otherRest.slice(1), slips - 1) ||
    (isSwapped && isWithin(rest.slice(2), otherRest.slice(2), slips - 1))
  );
}

function firstDifference(one: string, other: string): number {
  let at = 0;
  while (at < one.length && one[at] === other[at]) at += 1;
  return at;
}

function alikeNames(
  one: readonly BareName[],
  other: readonly BareName[],
): { one: string; other: string } | null {
  for (const first of one) {
    const second = other.find((each) => isAlike(first, each));
    if (second) return { one: first.name, other: second.name };
  }
  return null;
}

function mailsOf({ emails }: Known): string[] {
  return emails.map((email) => email.trim().toLowerCase()).filter((email) => email !== '');
}

function phonesOf({ phones }: Known): string[] {
  return phones.flatMap((phone) => figuresOf(phone) ?? []);
}

/** A postcode and a town may read the same; the letter before them keeps them apart. */
function placesOf({ places }: Known): string[] {
  return places.flatMap(({ postcode, city }) => [
    ...(postcode === null || postcode.trim() === '' ? [] : [`p ${postcode.trim().toUpperCase()}`]),
    ...(city === null || city.trim() === '' ? [] : [`c ${city.trim()}`]),
  ]);
}

type Sharing = { key: string; who: Known[] };

/** Everybody by what they share with another; capitals do not count. */
function sharing(everybody: readonly Known[], keysOf: (known: Known) => string[]): Sharing[] {
  const byKey = new Map<string, Sharing>();
  for (const known of everybody) {
    for (const key of new Set(keysOf(known))) {
      const bucket = byKey.get(key.toLowerCase()) ?? { key, who: [] };
      if (bucket.who.at(-1) !== known) bucket.who.push(known);
      byKey.set(key.toLowerCase(), bucket);
    }
  }
  return [...byKey.values()].filter(({ who }) => who.length > 1);
}

function everyTwo<Item>(items: readonly Item[], visit: (one: Item, other: Item) => void): void {
  items.forEach((one, at) => {
    for (let next = at + 1; next < items.length; next += 1) {
      const other = items[next];
      if (other !== undefined) visit(one, other);
    }
  });
}

/** Each with each other; of very many who share one thing, each with the first alone. */
function eachTwo<Item>(items: readonly Item[], visit: (one: Item, other: Item) => void): void {
  items.forEach((one, at) => {
    if (at > 0 && items.length > sharedMost) return;
    for (const other of items.slice(at + 1)) visit(one, other);
  });
}
