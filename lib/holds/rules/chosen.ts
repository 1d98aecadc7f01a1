/** A piece that was chosen on a page, before anything is written: its SKU, how many, which number. */
export type Chosen = { code: string; quantity: number; editionNumber: number | null };

/** The most lines that are chosen at once, and the most of one piece. */
export const chosenMost = { lines: 20, quantity: 99 } as const;

/**
 * Reads chosen pieces from an address: SKUs parted by points, `*` before how many, `~` before the
 * number of an edition. What does not read is left out; the same piece twice counts together.
 *
 * @example readChosen('TS-10-CI*2.HERON-P~7') // two terns, and number 7 of the heron
 */
export function readChosen(text: string): Chosen[] {
  return text.split('.').reduce<Chosen[]>((read, part) => {
    const match = /^([A-Z0-9]+(?:-[A-Z0-9]+)*)(?:\*([1-9]\d?)|~([1-9]\d{0,3}))?$/.exec(
      part.trim().toUpperCase(),
    );
    if (!match) return read;
    const [, code = '', pieces, number] = match;
    const editionNumber = number === undefined ? null : Number(number);
    return choose(read, { code, quantity: Number(pieces ?? '1'), editionNumber });
  }, []);
}

/** Writes chosen pieces as an address keeps them; {@link readChosen} reads them back. */
export function writeChosen(chosen: readonly Chosen[]): string {
  return chosen
    .map(({ code, quantity, editionNumber }) => {
      if (editionNumber !== null) return `${code}~${editionNumber}`;
      return quantity === 1 ? code : `${code}*${quantity}`;
    })
    .join('.');
}

/**
 * Chooses one more: onto the line of the same piece, or under the others. The same number of an
 * edition is chosen once, and a full list stays as it is.
 */
export function choose(chosen: readonly Chosen[], more: Chosen): Chosen[] {
  const same = chosen.find((each) => isSame(each, more));
  if (!same) return chosen.length < chosenMost.lines ? [...chosen, more] : [...chosen];
  if (more.editionNumber !== null) return [...chosen];
  return chosen.map((each) =>
    each === same
      ? { ...each, quantity: Math.min(each.quantity + more.quantity, chosenMost.quantity) }
      : each,
  );
}

/** Leaves one out again. */
export function leaveOut(chosen: readonly Chosen[], one: Chosen): Chosen[] {
  return chosen.filter((each) => !isSame(each, one));
}

function isSame(one: Chosen, other: Chosen): boolean {
  return one.code === other.code && one.editionNumber === other.editionNumber;
}
