import { firstOpen, workedUntil } from '../calendar';
import { nextBits } from '../chance';
import { fireKilns } from './kilns';
import { getUp, nextInLine, sitDown } from './lines';
import { piecesLost } from '../losses';
import { daysForPieces, type UnderWay } from './opening';
import { caseFrom, clearRun, drawDays, endLot, startLot, type Run } from './run';
import { anew, isAgain, kinds, type Line, type Lot, type StepNow } from './steps';

/**
 * Lives through one future from today until every job is ready or the days are out of sight.
 * Nothing moves and nothing begins on a closed day; on an open one pieces arrive first, then the
 * benches take whose turn it is, then kilns are lit.
 *
 * Afterwards the jobs say on which day they were ready, -1 where that is out of sight.
 */
export function liveThrough(run: Run, seed: number, future: number): void {
  const { calendar, end } = run.plan;
  clearRun(run, seed, future);
  let day = firstOpen(calendar, 0);
  run.today = day;
  if (day < end) openDoors(run);
  while (day < end && run.jobsLeft > 0) {
    run.today = day;
    run.sinceDay = day;
    do {
      endLots(run, day);
      for (const bench of run.benches) serve(run, bench);
    } while (run.endsOn[day]);
    fireKilns(run);
    day = firstOpen(calendar, day + 1);
  }
}

function openDoors(run: Run): void {
  const { opening } = run.plan;
  run.jobsLeft = run.jobs.length;
  run.sinceDay = 0;
  for (const job of run.jobs) {
    if (job.finished < job.wanted) continue;
    job.readyDay = 0;
    run.jobsLeft -= 1;
  }
  for (const lot of opening.underWay) goOn(run, lot);
  for (const { place, pieces, sinceDay } of opening.waiting) {
    const step = run.steps[place];
    run.sinceDay = sinceDay;
    if (step) arrive(run, step, pieces, null);
  }
}

/** What was begun before today takes what is left of it. */
function goOn(run: Run, from: UnderWay): void {
  const { calendar, cases } = run.plan;
  const { pieces, spent } = from;
  const step = run.steps[from.place];
  if (!step) return;
  const kiln = run.kilns[from.kiln] ?? null;
  const bits = kiln ? nextBits({ stream: kiln.inside }) : nextBits(step);
  const days = cases.cases[from.casesFrom + caseFrom(bits, from.firstCase)] ?? 0;
  const lot = startLot(run, step, pieces, null);
  lot.started = 0;
  if (step.kind === kinds.work && step.line) {
    const open = step.line.calendar;
    step.line.free -= 1;
    const left = Math.max(0, daysForPieces(days, pieces, step.job.pieces) - spent);
    endLot(run, lot, workedUntil(open, firstOpen(open, 0), left));
    return;
  }
  const until = firstOpen(calendar, Math.max(0, days - spent));
  endLot(run, lot, until);
  if (kiln) kiln.freeOn = Math.max(kiln.freeOn, until);
}

/** Every lot whose step ends on the day leaves it; what is lost begins anew. */
function endLots(run: Run, day: number): void {
  const { endsOn } = run;
  let lot = endsOn[day];
  while (lot) {
    const { step, pieces } = lot;
    endsOn[day] = lot.next;
    if (step.kind === kinds.work && step.line) step.line.free += 1;
    const lost = step.losses ? piecesLost(step.losses, pieces, nextBits(step)) : 0;
    if (run.watch) run.watch('ends', step.place, pieces, lost);
    if (lost > 0) beginAnew(run, step, lost);
    if (pieces > lost) leave(run, step, pieces - lost, lot);
    lot = endsOn[day];
  }
}

/** As many as are now too few for what is wanted begin anew. */
function beginAnew(run: Run, step: StepNow, lost: number): void {
  const { job } = step;
  const first = step.anewAt ?? step;
  let passed: StepNow | null = first;
  while (passed) {
    if (passed.isTogether) passed.reached -= lost;
    passed = passed === step ? null : passed.next;
  }
  const left = job.inPlay - lost;
  const pieces = left < job.wanted ? job.wanted - left : 0;
  job.inPlay = left + pieces;
  if (pieces > 0) arrive(run, first, pieces, anew);
}

function leave(run: Run, step: StepNow, pieces: number, lot: Lot): void {
  if (step.next) arrive(run, step.next, pieces, lot);
  else finish(run, step, pieces, lot);
}

function finish(run: Run, step: StepNow, pieces: number, lot: Lot): void {
  const { job } = step;
  if (run.watch) run.watch('finished', step.place, pieces, 0);
  job.finished += pieces;
  if (job.finished < job.wanted || job.readyDay >= 0) return;
  job.readyDay = run.today;
  job.lastLot = lot;
  run.jobsLeft -= 1;
}

/** Pieces come to a step: they wait for the others, for a bench or a kiln, or it begins. */
function arrive(run: Run, step: StepNow, coming: number, from: Lot | null): void {
  if (run.watch) run.watch('arrives', step.place, coming, 0);
  const pieces = step.isTogether ? gather(step, coming) : coming;
  if (pieces === 0) return;
  if (step.line) queueUp(run, step, pieces, from);
  else beginByItself(run, step, pieces, from);
}

function beginByItself(run: Run, step: StepNow, pieces: number, from: Lot | null): void {
  const isAsked = step.kind !== kinds.collector || !isAgain(from);
  const days = isAsked ? drawDays(run, step) : 0;
  const lot = startLot(run, step, pieces, from);
  if (run.watch) run.watch('starts', step.place, pieces, -1);
  endLot(run, lot, run.opensOn[run.today + days] ?? run.plan.end);
}

/** All pieces that may go on together; 0 while some that are wanted are still to come. */
function gather(step: StepNow, coming: number): number {
  step.reached += coming;
  step.gathered += coming;
  if (step.reached < step.job.wanted) return 0;
  const pieces = step.gathered;
  step.gathered = 0;
  return pieces;
}

function queueUp(run: Run, step: StepNow, pieces: number, from: Lot | null): void {
  const { line, waits } = step;
  const { sinceDay } = run;
  if (!line) return;
  if (waits === 0) {
    sitDown(line, step.seat);
    step.waitsSince = sinceDay;
    step.waitsFrom = from;
  } else if (sinceDay < step.waitsSince) step.waitsSince = sinceDay;
  step.waits = waits + pieces;
  if (step.kind !== kinds.fire) return;
  const since = step.waitsSince;
  if (line.volume === 0 || since < line.oldest) line.oldest = since;
  line.volume += pieces * step.job.pieceCm3;
}

/** A bench takes, while it has room, whose turn is first; all of it that waits there. */
function serve(run: Run, bench: Line): void {
  if (bench.free <= 0) return;
  let step = nextInLine(bench, 0);
  if (!step || !bench.calendar.isOpen[run.today]) return;
  while (step && bench.free > 0) {
    bench.free -= 1;
    takeUp(run, bench, step);
    step = nextInLine(bench, step.seat + 1);
  }
}

function takeUp(run: Run, bench: Line, step: StepNow): void {
  const pieces = step.waits;
  getUp(bench, step.seat);
  step.waits = 0;
  const lot = startLot(run, step, pieces, step.waitsFrom);
  lot.arrived = step.waitsSince < 0 ? 0 : step.waitsSince;
  if (run.watch) run.watch('starts', step.place, pieces, -1);
  const days = daysForPieces(drawDays(run, step), pieces, step.job.pieces);
  endLot(run, lot, workedUntil(bench.calendar, run.today, days));
}
