import 'server-only';
import { createHash } from 'node:crypto';

/** The SHA-256 of a content as UTF-8, in lower-case hexadecimal: what a yes or a name binds to. */
export function sha256Of(content: string): string {
  return createHash('sha256').update(content, 'utf8').digest('hex');
}
