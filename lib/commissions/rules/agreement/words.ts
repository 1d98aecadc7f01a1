/**
 * A sentence with one full stop at its end, whatever was typed.
 *
 * @example stopped('Lower ') // 'Lower.'; 'Lower?' stays as it is
 */
export function stopped(words: string): string {
  const bare = words.trim();
  return /[.!?…]$/.test(bare) ? bare : `${bare}.`;
}
