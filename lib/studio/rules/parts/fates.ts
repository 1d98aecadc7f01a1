import type { Day } from '@/lib/dates/rules';
import type { LossCause } from '@/lib/studio/rules/jobs/losing';
import { movesThatHold, outside } from '@/lib/studio/rules/jobs/standing';
import type { Peg } from '@/lib/studio/rules/routes';

/** A move that a part went with. */
export type PartMoved = {
  readonly id: string;
  readonly fromPosition: number;
  readonly toPosition: number;
  readonly movedOn: Day;
  readonly undoesId: string | null;
  /** Of a loss: why. */
  readonly cause: LossCause | null;
};

/** One piece of clay that was made for a number, with its moves in the order they happened. */
export type PartMade = {
  readonly id: string;
  readonly number: number;
  /** 1 for the first that was made for the number. */
  readonly make: number;
  readonly isSpare: boolean;
  /** It is in a kiln that was lit and not opened yet. */
  readonly isInKiln: boolean;
  readonly moves: readonly PartMoved[];
};

/** Where a part stands. */
export type PartNow = PartMade & {
  /** 0 is not begun; past the last step, finished; {@link outside} when it is lost. */
  readonly position: number;
  /** Null while it never moved. */
  readonly sinceOn: Day | null;
  /** Why it was lost; null while it is not. */
  readonly cause: LossCause | null;
};

/** A number of the drawing, with everything that was made for it. */
export type NumberNow = {
  readonly number: number;
  /** The part that is farthest on its way, which stands for the number; null when none is left. */
  readonly best: PartNow | null;
  /** Those that are under way or finished, the farthest first. */
  readonly living: readonly PartNow[];
  /** Those that were lost. */
  readonly lost: readonly PartNow[];
  /** What stands for it was begun because another was lost. */
  readonly isAnew: boolean;
};

/** Where one part stands, from its moves. */
export function partNow(part: PartMade): PartNow {
  const last = part.moves.at(-1);
  const position = last?.toPosition ?? 0;
  const arrival = movesThatHold(part.moves).findLast((move) => move.toPosition === position);
  return {
    ...part,
    position,
    sinceOn: arrival?.movedOn ?? null,
    cause: position === outside ? (arrival?.cause ?? null) : null,
  };
}

/**
 * Where every number of a drawing stands.
 *
 * What was begun anew by a mistake and taken back is no part of it any more.
 *
 * @returns in the order of their numbers
 */
export function numbersNow(numbers: readonly number[], parts: readonly PartMade[]): NumberNow[] {
  const now = parts.map(partNow);
  return numbers
    .toSorted((one, other) => one - other)
    .map((number) => {
      const all = now.filter((part) => part.number === number);
      const living = all
        .filter((part) => part.position !== outside)
        .toSorted((a, b) => b.position - a.position || a.make - b.make);
      const best = living[0] ?? null;
      const lost = all.filter((part) => part.cause !== null);
      return { number, best, living, lost, isAnew: best !== null && isMadeAnew(best) };
    });
}

function isMadeAnew({ make, isSpare }: PartMade): boolean {
  return make > 1 && !isSpare;
}

/** How many numbers are safe through a fire. */
export type SafeThrough = {
  readonly position: number;
  readonly name: string;
  readonly safe: number;
  readonly of: number;
};

/**
 * How many numbers have a good part behind each fire of the route.
 *
 * @returns one for each fire, in the order of the route
 */
export function safeThrough(
  steps: readonly { readonly name: string; readonly kind: string }[],
  numbers: readonly NumberNow[],
): SafeThrough[] {
  return steps.flatMap(({ name, kind }, at) => {
    if (kind !== 'fire') return [];
    const position = at + 1;
    const safe = numbers.filter(({ best }) => best !== null && best.position > position).length;
    return [{ position, name, safe, of: numbers.length }];
  });
}

/**
 * The fire that says most: the last that some numbers are through; the first while none is.
 */
export function farthestSafe(fires: readonly SafeThrough[]): SafeThrough | null {
  return fires.findLast(({ safe }) => safe > 0) ?? fires[0] ?? null;
}

/** What a part is, from its place: what its step makes of it, or that nothing is left of it. */
export type PartState = 'not_begun' | Peg | 'lost';

/** What a part is at a position of its route; behind the last step it is finished. */
export function stateAt(steps: readonly { readonly peg: Peg }[], position: number): PartState {
  if (position === outside) return 'lost';
  if (position === 0) return 'not_begun';
  return steps[position - 1]?.peg ?? 'finished';
}

/** What a number is: as the part that stands for it is. */
export function stateOf(steps: readonly { readonly peg: Peg }[], { best }: NumberNow): PartState {
  return stateAt(steps, best?.position ?? outside);
}
