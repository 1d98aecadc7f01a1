import { firstOpen } from '../calendar';
import { mixBits, steadyStep } from '../chance';
import { getUp, nextInLine } from './lines';
import { endLot, startLot, type Run } from './run';
import type { KilnNow, Line, StepNow } from './steps';

/** Lights every kiln that is empty, has a turn left this week and enough to fire. */
export function fireKilns(run: Run): void {
  const week = run.plan.weekOf[run.today] ?? 0;
  for (const kiln of run.kilns) {
    if (kiln.freeOn > run.today) continue;
    if (kiln.week !== week) {
      kiln.week = week;
      kiln.turns = 0;
    }
    if (kiln.turns >= kiln.turnsAWeek || !kiln.calendar.isOpen[run.today]) continue;
    const chosen = choose(run, kiln);
    if (chosen) fire(run, kiln, chosen);
  }
}

/** Of the cones that have enough or have waited long enough, who has waited longest. */
function choose(run: Run, kiln: KilnNow): StepNow | null {
  let chosen: StepNow | null = null;
  for (const line of kiln.lines) {
    if (line.volume === 0) continue;
    const isOverdue = run.today - line.oldest >= kiln.longestWait;
    if (line.volume < kiln.leastVolume && !isOverdue) continue;
    const found = longestThere(run, kiln, line);
    if (found && (!chosen || isSooner(found, chosen))) chosen = found;
  }
  return chosen;
}

/** Who has waited longer; of two that came on one day, whose turn is first. */
function isSooner(found: StepNow, than: StepNow): boolean {
  if (found.waitsSince !== than.waitsSince) return found.waitsSince < than.waitsSince;
  return found.place < than.place;
}

/** Looks only at pieces that this kiln can hold; null when they are not enough. */
function longestThere(run: Run, kiln: KilnNow, line: Line): StepNow | null {
  let volume = 0;
  let longest: StepNow | null = null;
  let step = nextInLine(line, 0);
  while (step) {
    const piece = step.job.pieceCm3;
    if (piece <= kiln.volume) {
      volume += piece * step.waits;
      if (!longest || step.waitsSince < longest.waitsSince) longest = step;
    }
    step = nextInLine(line, step.seat + 1);
  }
  if (!longest || volume >= kiln.leastVolume) return longest;
  return run.today - longest.waitsSince >= kiln.longestWait ? longest : null;
}

/** Fills the kiln, the longest waiting first and then in turn, piece by piece, and lights it. */
function fire(run: Run, kiln: KilnNow, chosen: StepNow): void {
  const { calendar, cases } = run.plan;
  const { line } = chosen;
  if (!line) return;
  kiln.loads = (kiln.loads + steadyStep) | 0;
  const chance = mixBits(kiln.loads) >>> 22;
  const firstLot = run.begun;
  let room = load(run, kiln, chosen, kiln.volume);
  let step = nextInLine(line, 0);
  while (step && room > 0) {
    room = load(run, kiln, step, room);
    step = nextInLine(line, step.seat + 1);
  }
  let days = 0;
  for (let at = firstLot; at < run.begun; at += 1) {
    const from = run.lots[at]?.step.casesFrom ?? 0;
    days = Math.max(days, cases.cases[from + chance] ?? 0);
  }
  const until = firstOpen(calendar, run.today + days);
  for (let at = firstLot; at < run.begun; at += 1) {
    const lot = run.lots[at];
    if (lot) endLot(run, lot, until);
  }
  kiln.freeOn = until;
  kiln.turns += 1;
  line.oldest = oldestIn(run, line);
}

/** Puts in as many pieces as there is room for; the others go on waiting. */
function load(run: Run, kiln: KilnNow, step: StepNow, room: number): number {
  const { line, waits } = step;
  const piece = step.job.pieceCm3;
  const pieces = Math.min(waits, Math.floor(room / piece));
  if (pieces === 0 || !line) return room;
  const lot = startLot(run, step, pieces, step.waitsFrom);
  lot.arrived = step.waitsSince < 0 ? 0 : step.waitsSince;
  step.waits = waits - pieces;
  line.volume -= pieces * piece;
  if (pieces === waits) getUp(line, step.seat);
  if (run.watch) run.watch('starts', step.place, pieces, kiln.at);
  return room - pieces * piece;
}

function oldestIn(run: Run, line: Line): number {
  let oldest = run.today;
  let step = nextInLine(line, 0);
  while (step) {
    if (step.waitsSince < oldest) oldest = step.waitsSince;
    step = nextInLine(line, step.seat + 1);
  }
  return oldest;
}
