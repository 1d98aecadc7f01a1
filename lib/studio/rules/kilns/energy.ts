import { splitCents, type Cents } from '@/lib/money/rules';
import { alignDecimals, divideRounded, parseDecimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A stretch of a firing, and for what part of it the elements are on: a decimal string in percent. */
export type PowerStage = { readonly minutes: number; readonly dutyPercent: string };

/** Why it was not worked out what a firing took or cost. */
export type EnergyRefusal =
  | { code: 'power_out_of_range' }
  | { code: 'minutes_out_of_range' }
  | { code: 'duty_out_of_range'; percent: string }
  | { code: 'meter_runs_backwards' }
  | { code: 'not_a_meter_reading'; text: string }
  | { code: 'not_a_rate'; text: string }
  | { code: 'nothing_in_the_kiln' }
  | { code: 'size_not_above_zero' };

const powerMostW = 500_000;
const minutesMost = 30 * 24 * 60;

/** Says in a full sentence why it was not worked out what a firing took or cost. */
export function energyRefusalMessage(refusal: EnergyRefusal): string {
  switch (refusal.code) {
    case 'power_out_of_range':
      return 'Write the kiln’s power in whole watts, as its plate says: volts times amperes.';
    case 'minutes_out_of_range':
      return 'A stretch of a firing takes at least a minute and at most thirty days.';
    case 'duty_out_of_range':
      return 'The elements are on for more than 0 and at most 100 in a hundred of the time.';
    case 'meter_runs_backwards':
      return 'The meter says less after the firing than before it. Read both once more.';
    case 'not_a_meter_reading':
      return 'Write what the meter says in kWh, such as 10482.5.';
    case 'not_a_rate':
      return 'Write what a kWh costs in cents, such as 15.25.';
    case 'nothing_in_the_kiln':
      return 'Nothing was written down for this load, so its cost cannot be shared out.';
    case 'size_not_above_zero':
      return 'Every piece of a load has a width, a height and a depth, and is there at least once.';
  }
}

/**
 * What a firing takes from the line, from the power of the kiln and how long its elements are on.
 *
 * @param of `powerW` whole watts; stages with whole minutes
 * @returns whole watt-hours, half up; refuses, in this order: power out of range, no stage or
 *   minutes out of range, a duty of 0 or less or above 100
 * @source common practice: power times time times duty
 * @example 11_520 W, 7 h at '15' and 9 h at '50' // 63_936 Wh
 */
export function firingWh(of: {
  powerW: number;
  stages: readonly PowerStage[];
}): Result<number, EnergyRefusal> {
  const { powerW, stages } = of;
  if (!isWithin(powerW, powerMostW)) return refuse({ code: 'power_out_of_range' });
  const areTimes = stages.every(({ minutes }) => isWithin(minutes, minutesMost));
  if (stages.length === 0 || !areTimes) return refuse({ code: 'minutes_out_of_range' });
  const duties = stages.flatMap(({ dutyPercent }) => parseDecimal(dutyPercent) ?? []);
  const { units, scale } = alignDecimals(duties);
  const whole = 100n * 10n ** BigInt(scale);
  const wrong = stages.find(({ dutyPercent }) => !isDuty(dutyPercent));
  if (wrong) return refuse({ code: 'duty_out_of_range', percent: wrong.dutyPercent });
  const minutesOn = stages.reduce(
    (sum, { minutes }, at) => sum + BigInt(minutes) * (units[at] ?? 0n),
    0n,
  );
  return ok(Number(divideRounded(BigInt(powerW) * minutesOn, 60n * whole, 'half-up')));
}

function isDuty(percent: string): boolean {
  const duty = parseDecimal(percent);
  return !!duty && duty.units > 0n && duty.units <= 100n * 10n ** BigInt(duty.scale);
}

function isWithin(number: number, most: number): boolean {
  return Number.isInteger(number) && number >= 1 && number <= most;
}

/**
 * What a firing took, from the meter before and after it.
 *
 * @param beforeKwh decimal string, what the meter said
 * @returns whole watt-hours, half up; refuses what is no reading, then a meter that runs backwards
 * @example meteredWh('10482.5', '10546.4') // 63_900
 */
export function meteredWh(beforeKwh: string, afterKwh: string): Result<number, EnergyRefusal> {
  const [before, after] = [parseDecimal(beforeKwh), parseDecimal(afterKwh)];
  if (!before || before.units < 0n) return refuse({ code: 'not_a_meter_reading', text: beforeKwh });
  if (!after || after.units < 0n) return refuse({ code: 'not_a_meter_reading', text: afterKwh });
  const { units, scale } = alignDecimals([before, after]);
  const used = (units[1] ?? 0n) - (units[0] ?? 0n);
  if (used < 0n) return refuse({ code: 'meter_runs_backwards' });
  return ok(Number(divideRounded(used * 1_000n, 10n ** BigInt(scale), 'half-up')));
}

/**
 * What a firing costs.
 *
 * @param of `wattHours` whole; `centsPerKwh` a decimal string; `wearCents` what elements and relays
 *   are reckoned at for each firing
 * @returns cents, half up; refuses what is no rate
 * @source common practice: kWh times what a kWh costs, and the wear
 * @example 92_160 Wh at '9' cents // 829n: $8.29
 */
export function firingCostCents(of: {
  wattHours: number;
  centsPerKwh: string;
  wearCents: Cents;
}): Result<Cents, EnergyRefusal> {
  const rate = parseDecimal(of.centsPerKwh);
  if (!rate || rate.units < 0n) return refuse({ code: 'not_a_rate', text: of.centsPerKwh });
  const thousand = 1_000n * 10n ** BigInt(rate.scale);
  const energy = divideRounded(BigInt(of.wattHours) * rate.units, thousand, 'half-up');
  return ok(energy + of.wearCents);
}

/** Pieces of one size in a load; sides in whole micrometres. */
export type InTheKiln = {
  readonly id: string;
  readonly pieces: number;
  readonly widthUm: number;
  readonly heightUm: number;
  readonly depthUm: number;
};

/** What of a firing falls to pieces of one size; `eachCents` adds up to `cents`. */
export type FiringShare = {
  readonly id: string;
  readonly cents: Cents;
  readonly eachCents: readonly Cents[];
};

/**
 * Shares the cost of a firing out over its load, by the room that each piece takes up. What stayed
 * empty is borne by what was in it.
 *
 * @returns a share for each line, in their order, together the whole cost to the cent; refuses an
 *   empty load, then a size or a count of zero or less
 * @source common practice: by volume; cents by the largest remainder, as {@link splitCents}
 * @example $19.00 over 1 large and 3 small ones of half its volume // 760n and 1_140n
 */
export function shareFiring(
  costCents: Cents,
  load: readonly InTheKiln[],
): Result<FiringShare[], EnergyRefusal> {
  if (load.length === 0) return refuse({ code: 'nothing_in_the_kiln' });
  const areThere = load.every((line) =>
    [line.pieces, line.widthUm, line.heightUm, line.depthUm].every(
      (number) => Number.isInteger(number) && number > 0,
    ),
  );
  if (!areThere) return refuse({ code: 'size_not_above_zero' });
  const shares = splitCents(costCents, load.map(roomOf));
  return ok(
    load.map(({ id, pieces }, at) => {
      const cents = shares[at] ?? 0n;
      return { id, cents, eachCents: splitCents(cents, new Array<bigint>(pieces).fill(1n)) };
    }),
  );
}

/** The room that pieces of one size take up together, in cubic micrometres. */
export function roomOf({ pieces, widthUm, heightUm, depthUm }: Omit<InTheKiln, 'id'>): bigint {
  return [widthUm, heightUm, depthUm].reduce((room, side) => room * BigInt(side), BigInt(pieces));
}
