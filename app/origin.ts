/** Where this gallery is found from outside, by the address under which it was asked. */
export function originOf(headers: Headers): string {
  const host = headers.get('x-forwarded-host') ?? headers.get('host') ?? 'localhost';
  const scheme = headers.get('x-forwarded-proto')?.split(',')[0]?.trim();
  return `${scheme === 'https' ? 'https' : 'http'}://${host}`;
}
