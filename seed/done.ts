import { invariant } from '@/lib/platform/invariant';
import type { Result } from '@/lib/platform/result';

/** What a command of the demo answered; the demo is not refused. */
export function done<Value, Refusal extends { code: string }>(
  result: Result<Value, Refusal>,
): Value {
  invariant(result.ok, result.ok ? '' : `The demo is refused: ${result.refusal.code}.`);
  return result.value;
}
