/** The sides of a picture in pixels. */
export type PictureSides = { readonly widthPx: number; readonly heightPx: number };

/**
 * The largest size that a HEIC file says of any picture in it, read from its head alone: nothing is
 * unfolded for it.
 *
 * @returns null when the file says none, so that it is not a sound HEIC picture
 * @source ISO/IEC 14496-12, boxes; ISO/IEC 23008-12, the box "ispe" in "meta" (from memory)
 * @example a picture laid together from tiles says the size of a tile and its own: its own is told
 */
export function heicSize(bytes: Uint8Array): PictureSides | null {
  const meta = boxNamed(bytes, 'meta');
  if (!meta) return null;
  const view = new DataView(meta.buffer, meta.byteOffset, meta.byteLength);
  let largest: PictureSides | null = null;
  // Name, version and flags, width, height: sixteen bytes from the name on.
  for (let at = 0; at + 16 <= meta.byteLength; at += 1) {
    if (!isNamed(meta, at, 'ispe')) continue;
    const sides = { widthPx: view.getUint32(at + 8), heightPx: view.getUint32(at + 12) };
    if (!largest || pixelsOf(sides) > pixelsOf(largest)) largest = sides;
  }
  return largest && pixelsOf(largest) > 0 ? largest : null;
}

/** How many pixels a picture of these sides has. */
export function pixelsOf({ widthPx, heightPx }: PictureSides): number {
  return widthPx * heightPx;
}

function boxNamed(bytes: Uint8Array, name: string): Uint8Array | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  while (at + 8 <= bytes.byteLength) {
    const length = view.getUint32(at);
    if (isNamed(bytes, at + 4, name))
      return bytes.subarray(at, length > 8 ? at + length : undefined);
    // A box of length 0 goes on to the end, one of length 1 has a longer length: neither stands
    // before the head of a picture.
    if (length < 8) return null;
    at += length;
  }
  return null;
}

function isNamed(bytes: Uint8Array, at: number, name: string): boolean {
  return String.fromCharCode(...bytes.subarray(at, at + name.length)) === name;
}
