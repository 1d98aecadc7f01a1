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

/** True when PostgreSQL asks for the transaction to be tried again: a conflict or a deadlock. */
export function isWorthAnotherTry(error: unknown): boolean {
  const cause = causeOf(error);
  const code = cause?.originalCode ?? cause?.code;
  if (code === '40001' || code === '40P01') return true;
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
