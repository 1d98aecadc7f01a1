/**
 * An address as addresses are compared: small letters, and no matter how it is spaced or where its
 * commas and full stops stand.
 *
 * @example placeKey(' 4 Ropewalk Lane,  Harrow ') // '4 ropewalk lane harrow'
 */
export function placeKey(address: string): string {
  return address
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s,.;]+/gu, ' ')
    .trim();
}
