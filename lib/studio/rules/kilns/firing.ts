import { ok, refuse, type Result } from '@/lib/platform/result';
import { degreesWords, type Scale } from './degrees';

/** A stretch of a firing: to a temperature at a pace, then kept there. Temperatures in whole °C. */
export type Segment = {
  readonly toC: number;
  /** How fast, in °C an hour, above zero whether it climbs or cools. */
  readonly rateCPerHour: number;
  readonly soakMinutes: number;
};

/** A firing as it is to go. */
export type Firing = {
  /** How warm the kiln is when it is switched on, in °C. */
  readonly fromC: number;
  readonly segments: readonly Segment[];
};

/** When a segment is over, in whole minutes from the beginning, and how long its parts take. */
export type SegmentTime = {
  readonly movingMinutes: number;
  readonly soakMinutes: number;
  readonly endsAfterMinutes: number;
};

/** How long a firing takes, in whole minutes. */
export type FiringTime = {
  readonly segments: readonly SegmentTime[];
  readonly totalMinutes: number;
  /** The hottest it gets, in °C. */
  readonly peakC: number;
};

/** Why a firing was not worked out; `place` counts segments from 1. */
export type FiringRefusal =
  | { code: 'no_segments'; most: number }
  | { code: 'temperature_out_of_range'; place: number }
  | { code: 'rate_out_of_range'; place: number }
  | { code: 'soak_out_of_range'; place: number }
  | { code: 'nothing_happens'; place: number };

const segmentsMost = 20;
const hottestC = 1_400;
const fastestCPerHour = 1_000;
const soakMinutesMost = 72 * 60;

/** Says in a full sentence why a firing was not worked out. */
export function firingRefusalMessage(refusal: FiringRefusal): string {
  switch (refusal.code) {
    case 'no_segments':
      return `Write at least one segment, and ${refusal.most} at most.`;
    case 'temperature_out_of_range':
      return `${segmentWords(refusal.place)} goes to 0 to 1,400 °C, in whole degrees.`;
    case 'rate_out_of_range':
      return `${segmentWords(refusal.place)} climbs or cools by 1 to 1,000 °C an hour; write it without a minus.`;
    case 'soak_out_of_range':
      return `${segmentWords(refusal.place)} soaks for 0 minutes to 72 hours.`;
    case 'nothing_happens':
      return `${segmentWords(refusal.place)} goes where the kiln is already, and does not soak. Leave it out.`;
  }
}

function segmentWords(place: number): string {
  return place === 0 ? 'The beginning' : `Segment ${place}`;
}

/**
 * How long each segment of a firing takes, and all of them together.
 *
 * It says what the schedule asks for; a full or an old kiln is often slower.
 *
 * @returns minutes, each stretch rounded up; refuses, in this order: no segments or too many, then
 *   for each in its turn a temperature, a pace or a soak out of range, or nothing that happens
 * @source common practice: degrees to go, divided by degrees an hour, and the soak
 * @example from 20 to 120 °C at 50 an hour with 180 minutes of soak // 120 + 180 minutes
 */
export function firingTime({ fromC, segments }: Firing): Result<FiringTime, FiringRefusal> {
  if (segments.length < 1 || segments.length > segmentsMost) {
    return refuse({ code: 'no_segments', most: segmentsMost });
  }
  if (!isDegrees(fromC)) return refuse({ code: 'temperature_out_of_range', place: 0 });
  const times: SegmentTime[] = [];
  let hereC = fromC;
  let minutes = 0;
  for (const [at, segment] of segments.entries()) {
    const code = faultOf(segment, hereC);
    if (code !== null) return refuse({ code, place: at + 1 });
    const { toC, rateCPerHour, soakMinutes } = segment;
    const movingMinutes = Math.ceil((Math.abs(toC - hereC) * 60) / rateCPerHour);
    minutes += movingMinutes + soakMinutes;
    times.push({ movingMinutes, soakMinutes, endsAfterMinutes: minutes });
    hereC = toC;
  }
  const peakC = Math.max(fromC, ...segments.map((segment) => segment.toC));
  return ok({ segments: times, totalMinutes: minutes, peakC });
}

type SegmentFault = Exclude<FiringRefusal['code'], 'no_segments'>;

function faultOf({ toC, rateCPerHour, soakMinutes }: Segment, hereC: number): SegmentFault | null {
  if (!isDegrees(toC)) return 'temperature_out_of_range';
  if (!(rateCPerHour >= 1 && rateCPerHour <= fastestCPerHour)) return 'rate_out_of_range';
  const isSoak = Number.isInteger(soakMinutes) && soakMinutes >= 0;
  if (!isSoak || soakMinutes > soakMinutesMost) return 'soak_out_of_range';
  return toC === hereC && soakMinutes === 0 ? 'nothing_happens' : null;
}

function isDegrees(celsius: number): boolean {
  return Number.isInteger(celsius) && celsius >= 0 && celsius <= hottestC;
}

/**
 * The instants at which the segments of a firing end.
 *
 * @param begunAt when the kiln was switched on
 */
export function endsAt({ segments }: FiringTime, begunAt: Date): Date[] {
  return segments.map(
    ({ endsAfterMinutes }) => new Date(begunAt.getTime() + endsAfterMinutes * 60_000),
  );
}

/** A length of time as it is said: `40 min`, `9 h`, `9 h 40 min`. */
export function minutesWords(minutes: number): string {
  const [hours, over] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${over} min`;
  return over === 0 ? `${hours} h` : `${hours} h ${over} min`;
}

/** Below which temperature a kiln is opened unless its maker says otherwise: 200 °F, in °C. */
export const openBelowC = ((200 - 32) * 5) / 9;

/** Why a kiln stays shut. */
export type OpenRefusal =
  { code: 'temperature_not_read' } | { code: 'too_hot'; celsius: number; openBelowC: number };

/**
 * Whether a kiln may be opened: only once it reads less than its limit.
 *
 * @param readC what it reads, in °C; null when nobody has looked
 * @param limitC what the maker of the kiln or the studio allows, in °C
 * @source common practice, from memory: not above about 200 °F; the maker’s own limit goes before it
 * @example mayOpen(94) // refused: that is 201 °F
 */
export function mayOpen(
  readC: number | null,
  limitC: number = openBelowC,
): Result<'open', OpenRefusal> {
  if (readC === null || Number.isNaN(readC)) return refuse({ code: 'temperature_not_read' });
  if (readC >= limitC) return refuse({ code: 'too_hot', celsius: readC, openBelowC: limitC });
  return ok('open');
}

/** Says in full sentences why a kiln stays shut, in the scale its own display has. */
export function openRefusalMessage(refusal: OpenRefusal, scale: Scale = 'C'): string {
  if (refusal.code === 'temperature_not_read') {
    return 'Read the kiln’s temperature first, and write it down.';
  }
  const { celsius, openBelowC: limitC } = refusal;
  return (
    `It reads ${degreesWords(celsius, scale)}: leave it shut until it is below ` +
    `${degreesWords(limitC, scale)}. Early air cracks glaze and ware, and what its maker says goes ` +
    'before this.'
  );
}
