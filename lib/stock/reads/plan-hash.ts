import 'server-only';
import { createHash } from 'node:crypto';
import type { FactValue, PlannedRow } from '../rules/list-plan';

/**
 * One line of hexadecimal for a whole plan: the same for the same plan and for no other, so that
 * what is confirmed is what was shown.
 */
export function hashPlan(plan: readonly PlannedRow[]): string {
  const hash = createHash('sha256');
  for (const row of plan) hash.update(`${row.verdict} ${row.line} ${row.code} ${wordsOf(row)}\n`);
  return hash.digest('hex');
}

/** Of what is known, only what the row changes counts: a sale of another piece does not matter. */
function wordsOf(row: PlannedRow): string {
  switch (row.verdict) {
    case 'same':
      return '';
    case 'new':
      return textOf([...Object.values(row.piece), row.here]);
    case 'changed':
      return textOf([
        ...[row.known.id, ...Object.values(row.piece)],
        ...row.changes.flatMap(({ fact, from, to }) => [fact, from, to]),
      ]);
    case 'refused':
      return textOf(row.faults.flatMap(({ column, sentence }) => [column, sentence]));
  }
}

function textOf(facts: readonly FactValue[]): string {
  return facts.map((fact) => (fact === null ? '-' : `=${fact}`)).join('\u001f');
}
