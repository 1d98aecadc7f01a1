import { describe, expect, test } from 'vitest';
import { pieceKinds } from '@/lib/catalogue/rules';
import { twoPeopleG } from '@/lib/commissions/rules/enquiry/cautions';
import { careParts, type CareAbout } from '@/lib/documents/rules/goes-with/care';

const tile: CareAbout = {
  ...{ kind: 'relief_tile', foodUse: 'not_proven', exposure: 'indoors' },
  ...{ isSetInWall: false, weightG: 2_400 },
};

function said(over: Partial<CareAbout>): Record<string, string> {
  const parts = careParts({ ...tile, ...over });
  return Object.fromEntries(parts.map((part) => [part.heading, part.sentences.join(' ')]));
}

test.each(pieceKinds)('a $word has cleaning, lifting and what to do when it breaks', ({ kind }) => {
  const headings = Object.keys(said({ kind }));
  expect(headings).toEqual(
    expect.arrayContaining(['Cleaning', 'Lifting it and taking it down', 'If something breaks']),
  );
});

describe('food', () => {
  // 21 CFR 109.16(b) gives the words for ware that looks fit for food and is not; from memory.
  test.each(['platter', 'bowl', 'planter'] as const)('%s without a test says so', (kind) => {
    expect(said({ kind })['Food']).toContain('NOT FOR FOOD USE. MAY POISON FOOD.');
    expect(said({ kind, foodUse: 'decorative_only' })['Food']).toContain('MAY POISON FOOD');
    expect(said({ kind, foodUse: 'proven' })['Food']).not.toContain('POISON');
  });

  test('nobody eats from a wall', () => {
    expect(said({})['Food']).toBeUndefined();
  });
});

test('a lamp is unplugged first, and only a lamp has a plug', () => {
  expect(said({ kind: 'lamp' })['Electricity']).toContain('Pull the plug');
  expect(said({ kind: 'lamp' })['If something breaks']).toMatch(/^Pull the plug first/);
  expect(said({})['Electricity']).toBeUndefined();
});

test('frost is told to planters and to what lives outdoors or under cover', () => {
  expect(said({ kind: 'planter' })['Weather']).toContain('frost');
  expect(said({ exposure: 'outdoors' })['Weather']).toContain('freezes');
  expect(said({ exposure: 'under_cover' })['Weather']).toContain('freezes');
  expect(said({ exposure: 'indoors' })['Weather']).toBeUndefined();
});

test('fifty pounds are for two, and no one hangs them elsewhere alone', () => {
  const lifting = 'Lifting it and taking it down';
  expect(twoPeopleG).toBe(Math.round(50 * 453.59237));
  expect(said({ kind: 'wall_panel', weightG: twoPeopleG })[lifting]).toContain(
    'At least two people',
  );
  expect(said({ kind: 'wall_panel', weightG: twoPeopleG - 1 })[lifting]).not.toContain(
    'two people',
  );
  expect(said({ kind: 'wall_panel', weightG: null })[lifting]).toContain('At least two people');
  expect(said({ kind: 'relief_tile', weightG: null })[lifting]).not.toContain('two people');
});

test('what is set into a wall is washed without acid and not taken down', () => {
  const set = said({ kind: 'wall_panel', isSetInWall: true });
  expect(set['Cleaning']).toContain('acid eats glaze and grout');
  expect(set['Lifting it and taking it down']).toContain('part of the wall');
});
