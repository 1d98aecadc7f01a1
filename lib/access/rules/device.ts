const browsers: readonly (readonly [RegExp, string])[] = [
  [/Edg(e|A|iOS)?\//, 'Edge'],
  [/OPR\//, 'Opera'],
  [/(Firefox|FxiOS)\//, 'Firefox'],
  [/(Chrome|CriOS|Chromium)\//, 'Chrome'],
  [/Safari\//, 'Safari'],
];
const machines: readonly (readonly [RegExp, string])[] = [
  [/iPhone/, 'an iPhone'],
  [/iPad/, 'an iPad'],
  [/Android.*Mobile/, 'an Android phone'],
  [/Android/, 'an Android tablet'],
  [/Windows/, 'Windows'],
  [/Macintosh/, 'a Mac'],
  [/Linux|X11/, 'Linux'],
];

/**
 * What a browser says of itself, in words that its owner knows it by.
 *
 * @param userAgent the request's header, which anyone can write as they like
 * @example deviceWords('') // 'an unknown browser'
 */
export function deviceWords(userAgent: string): string {
  const browser = browsers.find(([mark]) => mark.test(userAgent))?.[1] ?? 'an unknown browser';
  const machine = machines.find(([mark]) => mark.test(userAgent))?.[1];
  return machine ? `${browser} on ${machine}` : browser;
}

/**
 * The nearest address that a request says it came from.
 *
 * @param forwarded the header x-forwarded-for, of which the last entry is the nearest
 * @example addressOf('') // 'unknown'
 */
export function addressOf(forwarded: string): string {
  return forwarded.split(',').at(-1)?.trim().slice(0, 64) || 'unknown';
}
