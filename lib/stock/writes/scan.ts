import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { isValidGtin } from '@/lib/catalogue/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import {
  countedMost,
  type ScanInput,
  type SetCountedInput,
  type UnseeNumberInput,
} from '../input/counts';
import type { CountRefusal } from '../rules/moves/count-refusals';
import { countCommand, findOpenCount } from './count';

/** What a scan answers: the piece, and how many of it were counted so far. */
export type ScannedAnswer = { title: string; sku: string; counted: number };

/**
 * Counts one more of what was scanned; of an edition, the number behind the code, `CODE 7`.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a count nobody knows,
 *   one that is over, a code that was misread or that no piece has, an edition without its number, a
 *   number of what has none, one beyond the edition or seen already, more than 100,000 of it
 */
export async function scanInCount(
  doer: Doer,
  input: ScanInput,
): Promise<Result<ScannedAnswer, CountRefusal>> {
  return countCommand<ScannedAnswer>(doer, { name: 'scanInCount', input }, async (tx) => {
    const open = await findOpenCount(tx, input.countId);
    if (!open.ok) return open;
    const scanned = await findScanned(tx, input.code);
    if (!scanned.ok) return scanned;
    const { sku, number } = scanned.value;
    const line = await lineOf(tx, input.countId, sku.id);
    if (number !== null && line.numbers.includes(number)) {
      return refuse({ code: 'seen_already', title: sku.title, number });
    }
    if (line.counted >= countedMost) {
      return refuse({ code: 'too_many', title: sku.title, most: countedMost });
    }
    const numbers = number === null ? line.numbers : [...line.numbers, number];
    return keepLine(tx, input.countId, sku, { counted: line.counted + 1, numbers });
  });
}

/**
 * Says how many of a piece were counted in all, instead of scanning each.
 *
 * @returns refuses as {@link scanInCount}, and an edition, which is counted by its numbers
 */
export async function setCounted(
  doer: Doer,
  input: SetCountedInput,
): Promise<Result<ScannedAnswer, CountRefusal>> {
  return countCommand<ScannedAnswer>(doer, { name: 'setCounted', input }, async (tx) => {
    const open = await findOpenCount(tx, input.countId);
    if (!open.ok) return open;
    const sku = await findSku(tx, { id: input.skuId });
    if (!sku) return refuse({ code: 'unknown_code', typed: input.skuId });
    if (sku.size !== null) {
      return refuse({ code: 'number_needed', title: sku.title, size: sku.size });
    }
    return keepLine(tx, input.countId, sku, { counted: input.counted, numbers: [] });
  });
}

/**
 * Takes back that an edition's number was counted.
 *
 * @returns refuses as {@link setCounted}; a number that was not counted stays so
 */
export async function unseeNumber(
  doer: Doer,
  input: UnseeNumberInput,
): Promise<Result<ScannedAnswer, CountRefusal>> {
  return countCommand<ScannedAnswer>(doer, { name: 'unseeNumber', input }, async (tx) => {
    const open = await findOpenCount(tx, input.countId);
    if (!open.ok) return open;
    const sku = await findSku(tx, { id: input.skuId });
    if (!sku) return refuse({ code: 'unknown_code', typed: input.skuId });
    const line = await lineOf(tx, input.countId, sku.id);
    const numbers = line.numbers.filter((number) => number !== input.number);
    return keepLine(tx, input.countId, sku, { counted: numbers.length, numbers });
  });
}

type ScannedSku = {
  id: string;
  code: string;
  title: string;
  /** Of its edition, with the artist's proofs; null for what is not numbered. */
  size: number | null;
};

async function findScanned(
  tx: Tx,
  typed: string,
): Promise<Result<{ sku: ScannedSku; number: number | null }, CountRefusal>> {
  const whole = await findSku(tx, codeOf(typed));
  if (whole) return numberOf(whole, null);
  const [, code = typed, number] = /^(\S+)[\s~#]+(\d{1,5})$/.exec(typed) ?? [];
  const sku = number === undefined ? null : await findSku(tx, codeOf(code));
  if (sku) return numberOf(sku, Number(number));
  const misread = /^\d{12,14}$/.test(code) && !isValidGtin(code);
  return refuse({ code: misread ? 'misread_code' : 'unknown_code', typed: code.slice(0, 40) });
}

function numberOf(
  sku: ScannedSku,
  number: number | null,
): Result<{ sku: ScannedSku; number: number | null }, CountRefusal> {
  const { title, size } = sku;
  if (size === null) {
    return number === null ? ok({ sku, number }) : refuse({ code: 'no_number', title });
  }
  if (number === null) return refuse({ code: 'number_needed', title, size });
  const isOne = number >= 1 && number <= size;
  return isOne ? ok({ sku, number }) : refuse({ code: 'number_beyond', title, number, most: size });
}

function codeOf(typed: string) {
  return { OR: [{ code: typed.toUpperCase() }, { gtin: typed }] };
}

async function findSku(tx: Tx, where: { id: string } | ReturnType<typeof codeOf>) {
  const sku = await tx.sku.findFirst({
    where,
    select: {
      ...{ id: true, code: true },
      design: { select: { title: true } },
      edition: { select: { size: true, artistProofs: true } },
    },
    orderBy: { id: 'asc' },
  });
  if (!sku) return null;
  const { id, code, design, edition } = sku;
  return { id, code, title: design.title, size: edition && edition.size + edition.artistProofs };
}

async function lineOf(tx: Tx, countId: string, skuId: string) {
  const line = await tx.stockCountLine.findUnique({
    where: { countId_skuId: { countId, skuId } },
    select: { counted: true, numbers: true },
  });
  return line ?? { counted: 0, numbers: [] };
}

async function keepLine(
  tx: Tx,
  countId: string,
  sku: ScannedSku,
  line: { counted: number; numbers: readonly number[] },
): Promise<Result<ScannedAnswer, never>> {
  const { counted } = line;
  const numbers = line.numbers.toSorted((one, other) => one - other);
  await tx.stockCountLine.upsert({
    where: { countId_skuId: { countId, skuId: sku.id } },
    create: { countId, skuId: sku.id, counted, numbers },
    update: { counted, numbers },
    select: { skuId: true },
  });
  return ok({ title: sku.title, sku: sku.code, counted });
}
