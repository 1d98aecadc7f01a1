import { firstOpen } from '../calendar';
import { nextChance } from '../chance';
import { nextSeat, setSeat } from './queues';
import { add, at } from './rows';
import { cameOn, endLot, lotWidth, ofLot, startLot, type Run } from './run';

/** What could go into a kiln now. */
type Candidate = { queue: number; seat: number; oldest: number };

const none: Candidate = { queue: -1, seat: -1, oldest: 0 };

/** Lights every kiln that is empty, has a turn left this week and enough to fire. */
export function fireKilns(run: Run): void {
  const { kilns, weekOf } = run.plan;
  const week = at(weekOf, run.today);
  for (let kiln = 0; kiln < kilns.count; kiln += 1) {
    if (at(run.kilnFreeOn, kiln) > run.today) continue;
    if (run.kilnWeek[kiln] !== week) {
      run.kilnWeek[kiln] = week;
      run.kilnTurns[kiln] = 0;
    }
    if (at(run.kilnTurns, kiln) >= at(kilns.turns, kiln)) continue;
    if (!kilns.calendars[kiln]?.isOpen[run.today]) continue;
    const chosen = choose(run, kiln);
    if (chosen.queue >= 0) fire(run, kiln, chosen);
  }
}

/** Of the cones that have enough or have waited long enough, the one that has waited longest. */
function choose(run: Run, kiln: number): Candidate {
  const { kilns } = run.plan;
  const least = kilns.leastVolume[kiln] ?? 0;
  const longest = at(kilns.longestWait, kiln);
  let chosen = none;
  for (const queue of kilns.cones[kiln] ?? []) {
    const volume = run.waitVolume[queue] ?? 0;
    if (volume === 0) continue;
    const isOverdue = run.today - at(run.oldest, queue) >= longest;
    if (volume < least && !isOverdue) continue;
    const found = measure(run, kiln, queue);
    if (found.queue < 0) continue;
    if (isSooner(run, found, chosen)) chosen = found;
  }
  return chosen;
}

/** Who has waited longer; of two that came on one day, whose turn is first. */
function isSooner(run: Run, found: Candidate, than: Candidate): boolean {
  if (than.queue < 0 || found.oldest !== than.oldest) {
    return than.queue < 0 || found.oldest < than.oldest;
  }
  const { stepAt } = run.plan.queues;
  return at(stepAt, found.seat) < at(stepAt, than.seat);
}

/** Looks only at pieces that this kiln can hold. */
function measure(run: Run, kiln: number, queue: number): Candidate {
  const { kilns, queues, steps } = run.plan;
  const room = kilns.volume[kiln] ?? 0;
  const wordTo = at(queues.wordTo, queue);
  let volume = 0;
  let oldest = run.today + 1;
  let first = -1;
  let seat = nextSeat(run.waiting, at(queues.wordFrom, queue) * 32, wordTo);
  while (seat >= 0) {
    const step = at(queues.stepAt, seat);
    const piece = steps.pieceCm3[step] ?? 0;
    if (piece <= room) {
      volume += piece * at(run.waitPieces, step);
      if (at(run.waitSince, step) < oldest) {
        oldest = at(run.waitSince, step);
        first = seat;
      }
    }
    seat = seatAfter(run, seat, wordTo);
  }
  if (first < 0) return none;
  const isOverdue = run.today - oldest >= at(kilns.longestWait, kiln);
  if (volume < (kilns.leastVolume[kiln] ?? 0) && !isOverdue) return none;
  return { queue, seat: first, oldest };
}

function seatAfter(run: Run, seat: number, wordTo: number): number {
  return nextSeat(run.waiting, seat + 1, wordTo);
}

/** Fills the kiln, the longest waiting first and then in turn, piece by piece, and lights it. */
function fire(run: Run, kiln: number, chosen: Candidate): void {
  const { kilns, queues, steps, calendar } = run.plan;
  const { queue } = chosen;
  const chance = nextChance(run.streams, steps.count + kiln) >>> 22;
  const firstLot = run.lots;
  const wordTo = at(queues.wordTo, queue);
  let room = load(run, kiln, chosen.seat, kilns.volume[kiln] ?? 0);
  let seat = nextSeat(run.waiting, at(queues.wordFrom, queue) * 32, wordTo);
  while (seat >= 0 && room > 0) {
    room = load(run, kiln, seat, room);
    seat = seatAfter(run, seat, wordTo);
  }
  let days = 0;
  for (let lot = firstLot; lot < run.lots; lot += 1) {
    const from = at(steps.casesFrom, at(run.lotRows, lot * lotWidth + ofLot.step) * steps.seasons);
    days = Math.max(days, steps.cases[from + chance] ?? 0);
  }
  const until = firstOpen(calendar, run.today + days);
  for (let lot = firstLot; lot < run.lots; lot += 1) endLot(run, lot, until);
  run.kilnFreeOn[kiln] = until;
  add(run.kilnTurns, kiln, 1);
  run.oldest[queue] = oldestOf(run, queue);
}

/** Puts in as many pieces as there is room for; the others go on waiting. */
function load(run: Run, kiln: number, seat: number, room: number): number {
  const { queues, steps } = run.plan;
  const step = at(queues.stepAt, seat);
  const piece = steps.pieceCm3[step] ?? 1;
  const waits = at(run.waitPieces, step);
  const pieces = Math.min(waits, Math.floor(room / piece));
  if (pieces === 0) return room;
  const queue = at(steps.queueOf, step);
  const lot = startLot(run, step, pieces, at(run.waitFrom, step));
  cameOn(run, lot, at(run.waitSince, step));
  run.waitPieces[step] = waits - pieces;
  run.waitVolume[queue] = (run.waitVolume[queue] ?? 0) - pieces * piece;
  if (pieces === waits) setSeat(run.waiting, seat, false);
  if (run.watch) run.watch('starts', step, pieces, kiln);
  return room - pieces * piece;
}

function oldestOf(run: Run, queue: number): number {
  const { queues } = run.plan;
  const wordTo = at(queues.wordTo, queue);
  let oldest = run.today;
  let seat = nextSeat(run.waiting, at(queues.wordFrom, queue) * 32, wordTo);
  while (seat >= 0) {
    oldest = Math.min(oldest, at(run.waitSince, at(queues.stepAt, seat)));
    seat = seatAfter(run, seat, wordTo);
  }
  return oldest;
}
