import type { Cents } from '@/lib/money/rules';
import { parseDecimal } from '@/lib/money/rules/decimal';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';
import type { TurnTaken } from '@/lib/studio/rules/kilns/turns';
import type { RouteStep } from '@/lib/studio/rules/routes';
import type { CostFacts, CostStep, Spending } from './cost';
import { firingPart, kilnFor, turnsOfOne, type FiredLoad } from './firing-share';
import { dividedBy, fractionOf, times, type Fraction } from './fraction';
import { glazedUm2, lyingOfPiece, wetClayOf, type PieceSize } from './size';

/** A clay body as it is bought. */
export type BodyBought = {
  readonly id: string;
  readonly name: string;
  /** Decimal cents a kilogram; null while nobody said. */
  readonly centsPerKg: string | null;
  readonly densityGPerCm3: string | null;
  /** How many jobs were made of it. */
  readonly jobs: number;
};

/** What holds for every piece of the studio. */
export type StudioFacts = {
  readonly centsPerHour: Cents;
  readonly overheadPercent: string;
  readonly glazeCentsPerM2: Cents;
  readonly roomAroundUm: number;
  readonly kilns: readonly KilnFacts[];
  /** Firings that were opened, the last first. */
  readonly loads: readonly FiredLoad[];
  readonly bodies: readonly BodyBought[];
};

/** A piece to be reckoned, with its way through the studio. */
export type PieceToCost = PieceSize & {
  readonly steps: readonly RouteStep[];
  /** The body that its jobs were made of; null while none says. */
  readonly bodyId: string | null;
};

/** How one figure was found: from what, what was taken for want of better, what is not known. */
export type CostSaid = {
  readonly what: Spending;
  readonly kind: 'found' | 'taken' | 'missing';
  readonly words: string;
};

/** What a piece is reckoned from, and in words how each figure was found. */
export type CostKnown = {
  readonly facts: CostFacts;
  readonly said: readonly CostSaid[];
  /** Of each firing on its way, what it takes of a turn; null while that is not known. */
  readonly turns: readonly TurnTaken[] | null;
};

/**
 * Gathers what one piece is reckoned from.
 *
 * Clay is spent at the first step, glaze at the first glazing, a firing at its own step. What is not
 * known costs nothing here, and is said.
 *
 * @source common practice
 */
export function costFactsOf(studio: StudioFacts, piece: PieceToCost): CostKnown {
  const clay = clayOf(studio, piece);
  const glaze = glazeOf(studio, piece);
  const firing = firingsOf(studio, piece);
  const glazedAt = piece.steps.findIndex(({ peg, kind }) => peg === 'glaze' && kind === 'work');
  const steps = piece.steps.map((step, at): CostStep => {
    const { name, minutesEach, lossPercent } = step;
    const fired = firing.parts[at];
    return {
      ...{ name, minutesEach, lossPercent },
      ...(at === 0 && clay.cents ? { clay: clay.cents } : {}),
      ...(at === glazedAt && glaze.cents ? { glaze: glaze.cents } : {}),
      ...(fired ? { firing: fired } : {}),
    };
  });
  const { centsPerHour, overheadPercent } = studio;
  return {
    facts: { steps, centsPerHour, overheadPercent },
    said: [
      ...clay.said,
      ...(glazedAt < 0 ? [] : glaze.said),
      ...handsSaid(studio, piece),
      ...firing.said,
      ...mouldSaid(piece),
    ],
    turns: firing.turns,
  };
}

type Spent = { readonly cents: Fraction | null; readonly said: readonly CostSaid[] };

const missing = (what: Spending, words: string): Spent => ({
  cents: null,
  said: [{ what, kind: 'missing', words }],
});

function clayOf({ bodies }: StudioFacts, piece: PieceToCost): Spent {
  const named = bodies.find(({ id }) => id === piece.bodyId);
  const priced = bodies.filter(({ centsPerKg }) => centsPerKg !== null);
  const body = named ?? priced.toSorted((one, other) => other.jobs - one.jobs)[0];
  const perKg = parseDecimal(body?.centsPerKg ?? '');
  if (!body || !perKg) {
    const which = named ? named.name : 'the clay';
    return missing('clay', `What a kilogram of ${which} costs is not written down.`);
  }
  const wet = wetClayOf(piece, body.densityGPerCm3);
  if (!wet) return missing('clay', 'Neither its weight nor its size is written down.');
  const cents = times(fractionOf(perKg), { over: BigInt(wet.value), under: 1_000n });
  const found = `${wet.value} g of wet ${body.name}, with scrap, at ${body.centsPerKg ?? ''} cents a kilogram.`;
  return {
    cents,
    said: [
      { what: 'clay', kind: 'found', words: found },
      ...taken('clay', wet.taken),
      ...taken('clay', named ? null : `no job says its clay, so ${body.name} is taken`),
    ],
  };
}

function glazeOf({ glazeCentsPerM2 }: StudioFacts, piece: PieceToCost): Spent {
  if (glazeCentsPerM2 === 0n) {
    return missing('glaze', 'What a square metre of glaze costs is not written down.');
  }
  const face = glazedUm2(piece);
  if (face === null) return missing('glaze', 'Its size is not written down.');
  const perM2 = { over: 10n ** 12n, under: 1n };
  const cents = dividedBy({ over: face * glazeCentsPerM2, under: 1n }, perM2);
  const cm2 = face / 100_000_000n;
  const words = `${cm2} cm² at ${glazeCentsPerM2} cents a square metre.`;
  return { cents, said: [{ what: 'glaze', kind: 'found', words }] };
}

function handsSaid({ centsPerHour }: StudioFacts, { steps }: PieceToCost): CostSaid[] {
  if (centsPerHour === 0n) {
    const words = 'What an hour of hands is reckoned at is not written down.';
    return [{ what: 'hands', kind: 'missing', words }];
  }
  const at = steps.filter(({ minutesEach }) => Number(minutesEach) > 0);
  const words = at.map(({ name, minutesEach }) => `${name} ${minutesEach} min`).join(', ');
  return [{ what: 'hands', kind: 'found', words: `${words || 'No step asks for hands'}.` }];
}

function firingsOf(studio: StudioFacts, piece: PieceToCost) {
  const fires = piece.steps.some(({ kind }) => kind === 'fire');
  const lying = lyingOfPiece(piece);
  if (!fires || !lying) {
    const words = 'Its size is not written down, so its part of a firing is not known.';
    return { parts: [], turns: null, said: fires ? missing('firing', words).said : [] };
  }
  const said: CostSaid[] = [];
  const turns: TurnTaken[] = [];
  const isKnown = piece.steps.every(
    ({ kind, cone }) => kind !== 'fire' || kilnFor(studio.kilns, cone) !== null,
  );
  const parts = piece.steps.map((step): Fraction | null => {
    if (step.kind !== 'fire') return null;
    const kiln = kilnFor(studio.kilns, step.cone);
    if (kiln) turns.push(...turnsOfOne(kiln, lying.value, studio.roomAroundUm));
    const part = firingPart(step, lying.value, studio);
    const none = `no kiln goes to cone ${step.cone}, and none was opened at it`;
    said.push({
      what: 'firing',
      kind: part ? 'found' : 'missing',
      words: `${step.name}: ${part?.words ?? none}.`,
    });
    return part?.cents ?? null;
  });
  said.push(...taken('firing', lying.taken));
  return { parts, turns: isKnown ? turns : null, said };
}

function mouldSaid({ technique }: PieceToCost): readonly CostSaid[] {
  if (technique !== 'slip_cast' && technique !== 'press_moulded') return [];
  return missing('mould', 'What its mould cost to make is not written down anywhere.').said;
}

function taken(what: Spending, words: string | null): CostSaid[] {
  if (words === null) return [];
  return [{ what, kind: 'taken', words: `${words.charAt(0).toUpperCase()}${words.slice(1)}.` }];
}
