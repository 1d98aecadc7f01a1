import 'server-only';
import { createHash } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { Prisma } from '@/generated/prisma/client';
import type { Result } from '../result';
import { refuse } from '../result';
import { db } from './client';
import { isWorthAnotherTry } from './errors';

/** An open transaction; a step takes it and joins. */
export type Tx = Prisma.TransactionClient;

/** The same key came with something else in it: a fault of the page, told in plain words. */
export type KeyRefusal = { code: 'key_used_for_something_else' };

const triesMax = 10;

class RolledBack<Refusal> extends Error {
  constructor(readonly refusal: Refusal) {
    super('refused, so nothing was written');
  }
}

/**
 * Runs one command as one Serializable transaction, again up to ten times when PostgreSQL finds
 * two of them in each other's way. A refusal rolls everything back.
 */
export async function inTransaction<Value, Refusal>(
  work: (tx: Tx) => Promise<Result<Value, Refusal>>,
  limits: { timeoutMs: number } = { timeoutMs: 15_000 },
): Promise<Result<Value, Refusal>> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await once(work, limits.timeoutMs);
    } catch (error) {
      if (error instanceof RolledBack) return refuse((error as RolledBack<Refusal>).refusal);
      if (tries >= triesMax || !isWorthAnotherTry(error)) throw error;
      await pause(tries * tries * 8 + Math.random() * 20);
    }
  }
}

async function once<Value, Refusal>(
  work: (tx: Tx) => Promise<Result<Value, Refusal>>,
  timeoutMs: number,
): Promise<Result<Value, Refusal>> {
  return db().$transaction(
    async (tx) => {
      const result = await work(tx);
      if (!result.ok) throw new RolledBack(result.refusal);
      return result;
    },
    {
      isolationLevel: Prisma.TransactionIsolationLevel.Serializable,
      maxWait: 10_000,
      timeout: timeoutMs,
    },
  );
}

/** What a person sent, so that the same sending is known again. */
export type Command = {
  /** Made when the form was rendered; a uuid. */
  key: string;
  /** What is done, as the write's name. */
  name: string;
  staffId: string | null;
  input: unknown;
  at: Date;
};

/**
 * Runs a command that a person may send twice (a double click, a lost answer): the first run
 * keeps its answer under the key, the second gets that answer and writes nothing.
 *
 * The answer must be plain JSON (money as decimal text).
 */
export async function onceOnly<Answer extends Prisma.InputJsonValue, Refusal>(
  command: Command,
  work: (tx: Tx) => Promise<Result<Answer, Refusal>>,
  limits?: { timeoutMs: number },
): Promise<Result<Answer, Refusal | KeyRefusal>> {
  return inTransaction<Answer, Refusal | KeyRefusal>(async (tx) => {
    const inputHash = hashOf(command.input);
    const earlier = await tx.commandKey.findUnique({ where: { key: command.key } });
    if (earlier) {
      const same = earlier.command === command.name && earlier.inputHash === inputHash;
      if (!same) return refuse({ code: 'key_used_for_something_else' });
      return { ok: true, value: earlier.answer as Answer };
    }
    const result = await work(tx);
    if (!result.ok) return result;
    const { key, name, staffId, at } = command;
    await tx.commandKey.create({
      data: { key, command: name, staffId, inputHash, answer: result.value, at },
    });
    return result;
  }, limits);
}

function hashOf(input: unknown): string {
  const text = JSON.stringify(input, (_key, value: unknown) =>
    typeof value === 'bigint' ? `${value}n` : value,
  );
  return createHash('sha256').update(text).digest('hex');
}
