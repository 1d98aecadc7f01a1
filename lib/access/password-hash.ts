import 'server-only';
import { hash, verify } from '@node-rs/argon2';
import { oneForm } from './rules/password';

/** argon2id with 19 MiB, two passes and one lane. @source RFC 9106; OWASP's least parameters */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** The hash of a password nobody has, so that an unknown name takes as long as a known one. */
const nobodys =
  '$argon2id$v=19$m=19456,t=2,p=1$QckUwyEMVlk9B+I6vZF5jQ$kddvdvmo3h6riWjdfUBv5Fqpaa/f69oiuaRCucU4oog';

/** Hashes a password that {@link readPassword} has let through; the string carries its cost. */
export async function hashPassword(password: string): Promise<string> {
  return hash(password, cost);
}

/**
 * Whether this is the password of the hash.
 *
 * @param passwordHash null for an unknown name: takes the same time and answers false
 */
export async function isPasswordOf(typed: string, passwordHash: string | null): Promise<boolean> {
  const right = await verify(passwordHash ?? nobodys, oneForm(typed));
  return right && passwordHash !== null;
}
