import { describe, expect, test } from 'vitest';
import { hangingHeight } from '@/lib/walls/rules';

const inches = (number: number) => number * 25_400;

function hookIn(heightIn: number, dropIn: number, eyeIn: number): number {
  const hung = hangingHeight(
    { heightUm: inches(heightIn), cleatFromTopUm: inches(dropIn) },
    { by: 'eye', eyeUm: inches(eyeIn) },
  );
  return hung.ok ? hung.value.cleatUm / 25_400 : Number.NaN;
}

// Common practice, as galleries and framers write it down: eye height plus half the height of the
// piece less the drop of the wire; eye height 57 inches.
describe('how high a hook is', () => {
  test.each([
    [20, 2, 57, 65],
    [30, 1, 57, 71],
  ])('%d in tall, %d in of drop, eye height %d in: %d in', (height, drop, eye, hook) => {
    expect(hookIn(height, drop, eye)).toBe(hook);
  });
});
