/**
 * A page of this house that somebody asked for before they were let in.
 *
 * @param asked anything: it comes from the address, which a stranger may have written
 * @returns '/' for whatever could lead out of the house, or back to the door
 * @example insideHref('//elsewhere.example') // '/'
 */
export function insideHref(asked: string): string {
  const isPath = /^\/(?![/\\])[\x21-\x5b\x5d-\x7e]*$/.test(asked);
  const isDoor = /^\/(sign-in|sign-out|first-run|api)(\/|\?|$)/.test(asked);
  return isPath && !isDoor ? asked : '/';
}
