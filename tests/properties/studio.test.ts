import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import {
  decideMove,
  decideUndo,
  movesThatHold,
  piecesAt,
  standingsOf,
  type MoveToUndo,
} from '@/lib/studio/rules';
import { readyDays } from '@/lib/studio/rules/days';
import { type Technique } from '@/lib/studio/rules/routes';
import { routes } from '../helpers/usual-routes';

const techniques = Object.keys(routes) as Technique[];
type Wish = { undo: boolean; at: number; pieces: number };
const wish = fc.record({
  undo: fc.boolean(),
  at: fc.nat(12),
  pieces: fc.integer({ min: 1, max: 40 }),
});

const days = fc.array(wish, { maxLength: 60 });

/** Sends random wishes through the rules, and keeps what they let through. */
function run(technique: Technique, pieces: number, wishes: readonly Wish[]) {
  const job = {
    ...{ number: 1, pieces, wanted: pieces, steps: routes[technique] },
    ...{ moves: [] as MoveToUndo[], burning: [], parts: [] },
  };
  for (const { undo, at, pieces: wanted } of wishes) {
    const target = job.moves[at % Math.max(job.moves.length, 1)];
    const decided =
      undo && target
        ? decideUndo(job, job.moves, target.id)
        : decideMove(job, { fromPosition: at % (job.steps.length + 2), pieces: wanted }, null);
    if (!decided.ok) continue;
    const on = `2026-05-${String((job.moves.length % 28) + 1).padStart(2, '0')}`;
    job.moves.push({
      id: String(job.moves.length + 1),
      ...decided.value,
      movedOn: on as MoveToUndo['movedOn'],
      undoesId: undo && target ? target.id : null,
    });
  }
  return job;
}

test.prop([fc.constantFrom(...techniques), fc.integer({ min: 1, max: 60 }), days])(
  'whatever is moved and taken back, no piece appears or vanishes',
  (technique, pieces, wishes) => {
    const job = run(technique, pieces, wishes);
    const standing = piecesAt(job, job.moves);
    expect(standing.every((count) => count >= 0)).toBe(true);
    expect(standing.reduce((sum, count) => sum + count, 0)).toBe(pieces);
  },
);

test.prop([fc.constantFrom(...techniques), fc.integer({ min: 1, max: 60 }), days])(
  'moves that were taken back make no difference to where pieces stand',
  (technique, pieces, wishes) => {
    const job = run(technique, pieces, wishes);
    const all = piecesAt(job, job.moves);
    const net = new Array<number>(all.length).fill(0);
    net[0] = pieces;
    for (const { fromPosition, toPosition, pieces: count } of movesThatHold(job.moves)) {
      net[fromPosition] = (net[fromPosition] ?? 0) - count;
      net[toPosition] = (net[toPosition] ?? 0) + count;
    }
    expect(net).toEqual(all);
  },
);

test.prop([fc.constantFrom(...techniques), fc.integer({ min: 1, max: 60 }), days])(
  'every piece under way has a day since which it stands, and a day to be ready in order',
  (technique, pieces, wishes) => {
    const job = run(technique, pieces, wishes);
    for (const standing of standingsOf(job, job.moves)) {
      expect(standing.sinceOn === null).toBe(standing.position === 0);
    }
    const ready = readyDays(job, '2026-06-01');
    if (ready) {
      expect([ready.shortestOn, ready.likelyOn, ready.longestOn]).toEqual(
        [ready.shortestOn, ready.likelyOn, ready.longestOn].toSorted(),
      );
      expect(ready.shortestOn >= '2026-06-01').toBe(true);
    }
  },
);
