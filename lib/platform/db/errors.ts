import 'server-only';
import { Prisma } from '@/generated/prisma/client';

type Cause = { originalCode?: string; code?: string; constraint?: { index?: string } };

function causeOf(error: unknown): Cause | undefined {
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return undefined;
  const meta = error.meta as { driverAdapterError?: { cause?: Cause } } | undefined;
  return meta?.driverAdapterError?.cause;
}

function textOf(error: unknown): string {
  return error instanceof Error ? error.message : '';
}

/** Serialization conflict, deadlock, unique index, exclusion. */
const conflicts = ['40001', '40P01', '23505', '23P01'];

/**
 * True when another transaction may have come between: PostgreSQL asks for another try, or a row
 * that was not there when it was looked for is there now. The next try sees what the other wrote,
 * and can refuse in words.
 */
export function isWorthAnotherTry(error: unknown): boolean {
  const cause = causeOf(error);
  if (conflicts.includes(cause?.originalCode ?? cause?.code ?? '')) return true;
  if (error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2034') return true;
  return /could not serialize access|deadlock detected|TransactionWriteConflict/.test(
    textOf(error),
  );
}

/**
 * The name of the database's own rule that an error reports: a CHECK, a unique index, an
 * exclusion, or the name that a trigger puts in brackets at the start of its sentence.
 *
 * @returns null when the error is something else
 */
export function constraintOf(error: unknown): string | null {
  const index = causeOf(error)?.constraint?.index;
  if (index) return index;
  const text = `${textOf(error)} ${JSON.stringify(causeOf(error) ?? {})}`;
  const named = /constraint \\?"([^"\\]+)\\?"/.exec(text) ?? /\[([a-z_]+)\]/.exec(text);
  return named?.[1] ?? null;
}
