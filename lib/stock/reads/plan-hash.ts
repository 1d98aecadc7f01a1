import 'server-only';
import { createHash } from 'node:crypto';
import type { PlannedRow } from '../rules/list-plan';

/**
 * One line of hexadecimal for a whole plan: the same for the same plan and for no other, so that
 * what is confirmed is what was shown.
 */
export function hashPlan(plan: readonly PlannedRow[]): string {
  const hash = createHash('sha256');
  for (const row of plan) hash.update(`${JSON.stringify(hashed(row), asText)}\n`);
  return hash.digest('hex');
}

/** Of what is known, only what the row changes counts: a sale of another piece does not matter. */
function hashed(row: PlannedRow): unknown {
  return row.verdict === 'changed' ? { ...row, known: row.known.id } : row;
}

function asText(_key: string, value: unknown): unknown {
  return typeof value === 'bigint' ? `${value}n` : value;
}
