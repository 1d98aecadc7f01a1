import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { proposeFor } from '@/lib/sending/rules/boxes';
import { partsToGo } from '@/lib/sending/rules/to-go';
import { contentsTyped, readContents } from '@/lib/sending/rules/typed/contents';
import { weightTyped, readWeight } from '@/lib/sending/rules/typed/line';
import { piecesTyped, readPieces, type PieceToGo } from '@/lib/sending/rules/typed/pieces';
import { stageOf, decideWay, type Happened } from '@/lib/sending/rules/way';
import type { EventKind } from '@/lib/sending/rules/words';
import { gridOf } from '@/lib/studio/rules/parts/laying';

const unit = fc.constantFrom('in' as const, 'mm' as const);
const grams = fc.integer({ min: 1, max: 400_000 });
const sixteenths = fc.integer({ min: 8, max: 700 }).map((each) => Math.round(each * 1_587.5));
const named = fc.constantFrom('Tern over shoals', 'Moss', 'Heron, left wing', 'A bowl (second)');

test.prop([grams, unit])('a weight that is written reads back to the gram', (weight, of) => {
  expect(readWeight(weightTyped(weight, of), of)).toBe(weight);
});

const pieces: fc.Arbitrary<PieceToGo[]> = fc
  .array(
    fc.record({
      pieces: fc.integer({ min: 1, max: 9 }),
      words: named,
      ...{ heightUm: sixteenths, widthUm: sixteenths, depthUm: sixteenths, weightG: grams },
      isPart: fc.boolean(),
    }),
    { minLength: 1, maxLength: 20 },
  )
  .map((list) =>
    list.map(({ isPart, ...piece }, at) =>
      isPart
        ? { ...piece, pieces: 1, words: `Part ${at + 1}`, partNumber: at + 1 }
        : { ...piece, partNumber: null },
    ),
  );

test.prop([pieces])('a list that is written reads back, sides to a sixteenth', (list) => {
  const read = readPieces(piecesTyped(list, 'in'), 'in');
  expect(read).toEqual({ ok: true, value: list });
});

test.prop([pieces])('what is to go lies in the boxes, each as often as it was named', (list) => {
  const boxes = proposeFor(list);
  if (!boxes.ok) return expect(boxes.refusal.code).toBe('too_many_boxes');
  const lying = boxes.value.flatMap(({ contents }) => contents);
  const count = (of: readonly { words: string; pieces: number }[], words: string) =>
    of.filter((each) => each.words === words).reduce((sum, each) => sum + each.pieces, 0);
  for (const { words } of list) expect(count(lying, words)).toBe(count(list, words));
  for (const { contents, reckonedG } of boxes.value) {
    const weight = contents.reduce((sum, each) => sum + each.pieces * each.weightG, 0);
    expect(reckonedG).toBeGreaterThan(weight);
    const read = readContents(contentsTyped(contents, 'in'), 'in');
    expect(read).toEqual({ ok: true, value: contents });
  }
  return undefined;
});

test.prop([
  fc.integer({ min: 1, max: 8 }),
  fc.integer({ min: 1, max: 8 }),
  fc.integer({ min: 1_000, max: 200_000 }),
])('parts of a relief weigh together what the whole does', (rows, columns, weightG) => {
  const shapes = gridOf({ rows, columns, isOffset: false });
  const relief = { widthUm: 1_200_000, heightUm: 800_000, depthUm: 40_000, weightG };
  const parts = partsToGo(shapes, relief);
  expect(parts.map(({ partNumber }) => partNumber)).toEqual(shapes.map(({ number }) => number));
  expect(parts.reduce((sum, part) => sum + part.weightG, 0)).toBe(weightG);
});

const kinds: readonly EventKind[] = ['packed', 'sent', 'arrived', 'fetched', 'called_off', 'noted'];

test.prop([
  fc.constantFrom('carrier' as const, 'by_us' as const, 'fetched' as const),
  fc.array(fc.constantFrom(...kinds), { maxLength: 12 }),
])('whatever is tried, a shipment goes its way once, and ends once', (how, tried) => {
  const events: Happened[] = [];
  for (const kind of tried) {
    const facts = { how, carrier: 'a carrier', events, boxes: 1, emptyBox: null, soldOn: null };
    const days = { on: '2026-11-20', today: '2026-11-20' } as const;
    if (decideWay(facts, kind, days).ok) events.push({ kind, on: days.on });
  }
  const has = (kind: EventKind) => events.filter((event) => event.kind === kind).length;
  for (const kind of kinds) if (kind !== 'noted') expect(has(kind)).toBeLessThanOrEqual(1);
  expect(has('sent') + has('fetched') + has('called_off')).toBeLessThanOrEqual(1);
  if (has('arrived') > 0) expect(has('sent')).toBe(1);
  if (has('called_off') > 0) expect(stageOf(events)).toBe('called_off');
});
