import { randomUUID } from 'node:crypto';

/** A new row's id, for rows that must name each other before they are written. */
export function newId(): string {
  return randomUUID();
}
