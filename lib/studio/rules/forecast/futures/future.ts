import { firstOpen, workedUntil, type Calendar } from '../calendar';
import { nextChance } from '../chance';
import { fireKilns } from './kilns';
import { piecesLost } from '../losses';
import { casesOfDays } from '../pert';
import { daysForPieces, type UnderWay } from './opening';
import { nextSeat, setSeat } from './queues';
import { againFrom, clearRun, drawCase, drawDays, endLot, fromToday, isAgain } from './run';
import { add, at } from './rows';
import { cameOn, lotWidth, ofLot, startLot, type Run } from './run';
import { kinds } from './steps';

/**
 * Lives through one future from today until every job is ready or the days are out of sight.
 * Nothing moves and nothing begins on a closed day; on an open one pieces arrive first, then the
 * benches take whose turn it is, then kilns are lit.
 *
 * Afterwards `readyDay` holds each job's day, -1 where it is out of sight.
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
      serveBenches(run);
    } while (at(run.endsOn, day) >= 0);
    fireKilns(run);
    day = firstOpen(calendar, day + 1);
  }
}

function openDoors(run: Run): void {
  const { opening, steps, jobs } = run.plan;
  run.jobsLeft = jobs.length;
  run.sinceDay = 0;
  for (let job = 0; job < jobs.length; job += 1) {
    if (at(opening.finished, job) < at(steps.piecesOf, job)) continue;
    run.readyDay[job] = 0;
    run.jobsLeft -= 1;
  }
  for (const lot of opening.underWay) goOn(run, lot);
  for (const { step, pieces, sinceDay } of opening.waiting) {
    run.sinceDay = sinceDay;
    arrive(run, step, pieces, fromToday);
  }
}

/** What was begun before today takes what is left of it. */
function goOn(run: Run, from: UnderWay): void {
  const { steps, calendar, benchCalendars } = run.plan;
  const { step, pieces, kiln, spent } = from;
  const days = steps.cases[from.casesFrom + caseLeft(run, from)] ?? 0;
  const lot = startLot(run, step, pieces, fromToday);
  run.lotRows[lot * lotWidth + ofLot.started] = 0;
  if (at(steps.kindOf, step) === kinds.work) {
    const bench = at(steps.queueOf, step);
    const open = benchCalendars[bench] ?? calendar;
    add(run.benchFree, bench, -1);
    const left = Math.max(0, daysForPieces(days, pieces, at(steps.ofPieces, step)) - spent);
    endLot(run, lot, workedUntil(open, firstOpen(open, 0), left));
    return;
  }
  const until = firstOpen(calendar, Math.max(0, days - spent));
  endLot(run, lot, until);
  if (kiln >= 0) run.kilnFreeOn[kiln] = Math.max(at(run.kilnFreeOn, kiln), until);
}

/** A case that is not over yet; all that is in one kiln shares one chance. */
function caseLeft(run: Run, { step, kiln, firstCase }: UnderWay): number {
  const { steps, kilns } = run.plan;
  if (kiln < 0) return Math.min(casesOfDays - 1, drawCase(run, step, firstCase));
  const stream = steps.count + kilns.count + kiln;
  const stood = run.streams[stream] ?? 0;
  const shared = drawCase(run, stream, firstCase);
  run.streams[stream] = stood;
  return Math.min(casesOfDays - 1, shared);
}

/** Every lot whose step ends on the day leaves it; what is lost begins anew. */
function endLots(run: Run, day: number): void {
  const { steps } = run.plan;
  let lot = at(run.endsOn, day);
  while (lot >= 0) {
    const row = lot * lotWidth;
    const step = at(run.lotRows, row + ofLot.step);
    const pieces = at(run.lotRows, row + ofLot.pieces);
    run.endsOn[day] = at(run.lotRows, row + ofLot.next);
    if (at(steps.kindOf, step) === kinds.work) add(run.benchFree, at(steps.queueOf, step), 1);
    const lost = at(steps.lossOf, step) < 0 ? 0 : drawLost(run, step, pieces);
    if (run.watch) run.watch('ends', step, pieces, lost);
    if (lost > 0) beginAnew(run, step, lost, lot);
    if (pieces > lost) leave(run, step, pieces - lost, lot);
    lot = at(run.endsOn, day);
  }
}

function drawLost(run: Run, step: number, pieces: number): number {
  const { steps } = run.plan;
  const table = steps.losses[at(steps.lossOf, step)];
  return table ? piecesLost(table, pieces, nextChance(run.streams, step)) : 0;
}

function beginAnew(run: Run, step: number, pieces: number, lot: number): void {
  const { steps } = run.plan;
  const first = at(steps.anewFrom, step);
  for (let back = first; back <= step; back += 1) {
    if (at(steps.isTogether, back)) add(run.reached, back, -pieces);
  }
  arrive(run, first, pieces, againFrom(lot));
}

function leave(run: Run, step: number, pieces: number, lot: number): void {
  const { steps } = run.plan;
  if (!at(steps.isLast, step)) {
    arrive(run, step + 1, pieces, lot);
    return;
  }
  if (run.watch) run.watch('finished', step, pieces, 0);
  const job = at(steps.jobOf, step);
  add(run.finished, job, pieces);
  if (at(run.finished, job) < at(steps.piecesOf, job)) return;
  run.readyDay[job] = run.today;
  run.lastLot[job] = lot;
  run.jobsLeft -= 1;
}

/** Pieces come to a step: they wait for the others, for a bench or a kiln, or it begins. */
function arrive(run: Run, step: number, coming: number, from: number): void {
  const { steps, calendar } = run.plan;
  if (run.watch) run.watch('arrives', step, coming, 0);
  const pieces = at(steps.isTogether, step) ? gather(run, step, coming) : coming;
  if (pieces === 0) return;
  const kind = at(steps.kindOf, step);
  if (kind <= kinds.fire) {
    queueUp(run, step, pieces, from);
    return;
  }
  const isAsked = kind !== kinds.collector || !isAgain(run, from);
  const days = isAsked ? drawDays(run, step) : 0;
  const lot = startLot(run, step, pieces, from);
  if (run.watch) run.watch('starts', step, pieces, -1);
  endLot(run, lot, firstOpen(calendar, run.today + days));
}

/** All pieces that may go on together; 0 while others are still to come. */
function gather(run: Run, step: number, coming: number): number {
  const { steps } = run.plan;
  add(run.reached, step, coming);
  add(run.gathered, step, coming);
  if (at(run.reached, step) < at(steps.ofPieces, step)) return 0;
  const pieces = at(run.gathered, step);
  run.gathered[step] = 0;
  return pieces;
}

function queueUp(run: Run, step: number, pieces: number, from: number): void {
  const { steps } = run.plan;
  const waits = at(run.waitPieces, step);
  if (waits === 0) {
    setSeat(run.waiting, at(steps.seatOf, step), true);
    run.waitSince[step] = run.sinceDay;
    run.waitFrom[step] = from;
  }
  const since = Math.min(at(run.waitSince, step), run.sinceDay);
  run.waitPieces[step] = waits + pieces;
  run.waitSince[step] = since;
  if (at(steps.kindOf, step) !== kinds.fire) return;
  const queue = at(steps.queueOf, step);
  const volume = run.waitVolume[queue] ?? 0;
  run.oldest[queue] = volume === 0 ? since : Math.min(at(run.oldest, queue), since);
  run.waitVolume[queue] = volume + pieces * (steps.pieceCm3[step] ?? 0);
}

/** Each bench takes, while it has room, whose turn is first; all of it that waits there. */
function serveBenches(run: Run): void {
  const { queues, benchCalendars } = run.plan;
  for (let bench = 0; bench < benchCalendars.length; bench += 1) {
    const calendar = benchCalendars[bench];
    if (!calendar || !at(calendar.isOpen, run.today)) continue;
    const from = at(queues.wordFrom, bench) * 32;
    while (at(run.benchFree, bench) > 0) {
      const seat = nextSeat(run.waiting, from, at(queues.wordTo, bench));
      if (seat < 0) break;
      add(run.benchFree, bench, -1);
      takeUp(run, seat, calendar);
    }
  }
}

function takeUp(run: Run, seat: number, calendar: Calendar): void {
  const { steps, queues } = run.plan;
  const step = at(queues.stepAt, seat);
  const pieces = at(run.waitPieces, step);
  setSeat(run.waiting, seat, false);
  run.waitPieces[step] = 0;
  const lot = startLot(run, step, pieces, at(run.waitFrom, step));
  cameOn(run, lot, at(run.waitSince, step));
  if (run.watch) run.watch('starts', step, pieces, -1);
  const days = daysForPieces(drawDays(run, step), pieces, at(steps.ofPieces, step));
  endLot(run, lot, workedUntil(calendar, run.today, days));
}
