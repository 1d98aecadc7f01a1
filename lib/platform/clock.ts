/** The instant now, read once per request or job and passed on as an argument. */
export function now(): Date {
  return new Date();
}
