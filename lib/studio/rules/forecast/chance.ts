/** How far a stream goes with every chance: 2^32 by the golden ratio. */
export const steadyStep = 0x9e3779b9;

/**
 * Mixes a word of 32 bits so that neighbours come out far apart; no two words give the same.
 *
 * @source the finaliser of MurmurHash3, A. Appleby
 */
export function mix(word: number): number {
  return mixBits(word) >>> 0;
}

/** The same 32 bits as a number with a sign, which costs less where very many are mixed. */
export function mixBits(word: number): number {
  let mixed = word;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}

/**
 * A word of 32 bits for a name, the same on every machine.
 *
 * @source FNV-1a, G. Fowler, L. C. Noll, K.-P. Vo; taken over UTF-16 units, low byte first
 */
export function wordOf(name: string): number {
  let word = 0x811c9dc5;
  for (let at = 0; at < name.length; at += 1) {
    const unit = name.charCodeAt(at);
    word = Math.imul(word ^ (unit & 0xff), 0x01000193);
    if (unit > 0xff) word = Math.imul(word ^ (unit >>> 8), 0x01000193);
  }
  return word >>> 0;
}

/** The key of one future, from the seed of the forecast. */
export function futureKey(seed: number, future: number): number {
  return mix(mix(seed + steadyStep) ^ (future + 1));
}

/**
 * The next chance of a stream: any whole number below 2^32, each as likely as the others. Every
 * step of every job has a stream of its own, so that one more job changes nothing in the luck of
 * the others.
 *
 * @source SplitMix, G. L. Steele, D. Lea, C. H. Flood, 2014, in 32 bits: a steady step, then a mix
 */
export function nextChance(streams: Int32Array, at: number): number {
  const stood = ((streams[at] ?? 0) + steadyStep) | 0;
  streams[at] = stood;
  return mix(stood);
}

/** The chance of {@link nextChance} as 32 bits with a sign, of something that has one stream. */
export function nextBits(owner: { stream: number }): number {
  const stood = (owner.stream + steadyStep) | 0;
  owner.stream = stood;
  return mixBits(stood);
}
