import { expect, test } from 'vitest';
import { bandPegs } from '@/lib/commissions/rules/course/band';
import { pegsTold, whereForCollector } from '@/lib/commissions/rules/page/told';

test('every peg has a name of its own, and only what has a day tells one', () => {
  const pegs = pegsTold(
    bandPegs.map((name, at) => ({
      name,
      state: at === 0 ? 'done' : 'open',
      on: at === 0 ? '2026-05-12' : null,
    })),
    '2026-06-01',
  );
  expect(new Set(pegs.map((peg) => peg.name)).size).toBe(bandPegs.length);
  expect(pegs[0]).toEqual({ name: 'Agreed', state: 'filled', when: '12 May' });
  expect(pegs[1]).toEqual({ name: 'Sketch chosen', state: 'open' });
});

test.each([
  [{ key: 'deposit_to_ask', leftCents: 500_000n } as const],
  [{ key: 'rest_owed', handedOn: '2026-05-01', leftCents: 12_345n } as const],
  [{ key: 'ended', endedOn: '2026-05-01', why: 'they quarrelled over the stair' } as const],
  [{ key: 'in_the_studio', jobNumber: 7, pieces: 3, ofPieces: 12, at: 'bisque firing' } as const],
])('%o is told without amounts, numbers of jobs or inside reasons', (where) => {
  expect(whereForCollector(where, '2026-05-12')).not.toMatch(/\$|5,?000|123|quarrelled|job|7/);
});
