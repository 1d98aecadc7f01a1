/**
 * States what can never be false here.
 *
 * @throws Error with the sentence when it is false: a bug, never an answer to a person
 */
export function invariant(condition: unknown, sentence: string): asserts condition {
  if (!condition) throw new Error(`Broken promise: ${sentence}`);
}
