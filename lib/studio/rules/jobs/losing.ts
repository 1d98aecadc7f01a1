import { ok, refuse, type Result } from '@/lib/platform/result';
import { decideLeaving, type JobFacts, type LeaveRefusal, type PiecesMeant } from './moving';
import { finishedPosition, outside, piecesAt } from './standing';

/** Why a piece was lost: the causes worth counting. */
export const lossCauses = [
  'dried_too_fast',
  'too_thick',
  'joint',
  'steam',
  'kiln_over',
  'kiln_under',
  'glaze_fault',
  'shelf',
  'handling',
  'wrong_size',
  'wrong_colour',
  'other',
] as const;
/** One of {@link lossCauses}. */
export type LossCause = (typeof lossCauses)[number];

/** A cause in words, for a form and a history. */
export const lossCauseWords: Readonly<Record<LossCause, string>> = {
  dried_too_fast: 'dried too fast',
  too_thick: 'too thick',
  joint: 'a joint opened',
  steam: 'burst by steam',
  kiln_over: 'fired too hot',
  kiln_under: 'fired too cool',
  glaze_fault: 'the glaze failed',
  shelf: 'stuck to the shelf',
  handling: 'dropped or knocked',
  wrong_size: 'the wrong size',
  wrong_colour: 'the wrong colour',
  other: 'something else',
};

/** Why a loss was not written down. */
export type LossRefusal =
  LeaveRefusal | { code: 'not_begun' } | { code: 'in_stock_already' } | { code: 'say_what' };

/** A loss to write down, and what is begun anew because too few are left. */
export type Loss = {
  fromPosition: number;
  pieces: number;
  partIds: readonly string[];
  beginAnew: number;
  /** Of a job with a numbered drawing: the numbers that are made anew, as many. */
  numbers: readonly number[];
};

/**
 * Decides whether pieces are written down as lost, and how many are begun anew.
 *
 * What is left is too few when fewer than wanted are still under way or finished. With a numbered
 * drawing a number is made anew when no other part of that number is left.
 *
 * @param of.isInStock whether finished pieces of the job went into stock: there they break as stock
 * @param of.goesOn false when its commission has ended: then nothing is begun anew
 * @returns refuses, in this order: no such job, not begun, in stock already, then as
 *   {@link decideLeaving}
 */
export function decideLoss(
  job: JobFacts | null,
  meant: PiecesMeant,
  of: { isInStock: boolean; goesOn: boolean },
): Result<Loss, LossRefusal> {
  if (!job) return refuse({ code: 'no_such_job' });
  if (meant.fromPosition === 0) return refuse({ code: 'not_begun' });
  if (meant.fromPosition >= finishedPosition(job) && of.isInStock) {
    return refuse({ code: 'in_stock_already' });
  }
  const leaving = decideLeaving(job, meant);
  if (!leaving.ok) return leaving;
  const numbers = of.goesOn ? numbersLeftWithout(job, leaving.value.partIds) : [];
  const beginAnew =
    job.parts.length > 0 ? numbers.length : of.goesOn ? tooFew(job, meant.pieces) : 0;
  return ok({ ...leaving.value, beginAnew, numbers });
}

/** How many fewer than wanted are left once so many are lost; never below nought. */
export function tooFew(job: JobFacts, lost: number): number {
  const left = piecesAt(job, job.moves).reduce((sum, pieces) => sum + pieces, 0) - lost;
  return Math.max(0, Math.min(lost, job.wanted - left));
}

function numbersLeftWithout(job: JobFacts, lostIds: readonly string[]): number[] {
  const lost = new Set(lostIds);
  const numbers = new Set(job.parts.flatMap((part) => (lost.has(part.id) ? [part.number] : [])));
  for (const part of job.parts) {
    if (part.position !== outside && !lost.has(part.id)) numbers.delete(part.number);
  }
  return [...numbers].toSorted((one, other) => one - other);
}
