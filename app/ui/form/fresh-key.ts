/** A fresh key, a random uuid; works on plain http in the gallery's own network too. */
export function freshKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const marked = bytes.map((byte, at) => {
    if (at === 6) return (byte & 0x0f) | 0x40;
    return at === 8 ? (byte & 0x3f) | 0x80 : byte;
  });
  const hex = Array.from(marked, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
