import type { Day } from '@/lib/dates/rules';
import type { BeginFacts, Move } from '@/lib/studio/rules';
import type { RouteStep, Technique } from '@/lib/studio/rules/routes';
import type { Counted } from '@/lib/studio/rules/losses/learned';

/** A size in whole micrometres; null where nobody knows. */
export type KnownSize = {
  readonly widthUm: number | null;
  readonly heightUm: number | null;
  readonly depthUm: number | null;
};

/** A bench as it is written down. */
export type BenchFacts = { readonly id: string; readonly name: string; readonly atOnce: number };

/** A kiln as it is written down, and how often it was lit since Monday. */
export type KilnFacts = {
  readonly id: string;
  readonly name: string;
  readonly insideHeightUm: number;
  readonly shelfWidthUm: number;
  readonly shelfDepthUm: number;
  readonly shelfThickUm: number;
  readonly shelves: number;
  readonly cones: readonly string[];
  readonly turnsAWeek: number;
  readonly leastFillPercent: number;
  readonly longestWaitDays: number;
  readonly loadsThisWeek: number;
};

/** Days on which the studio, or one bench or kiln of it, stands still. */
export type ClosedSpan = {
  readonly fromOn: Day;
  readonly toOn: Day;
  readonly kilnId: string | null;
  readonly benchId: string | null;
};

/** Pieces of a job that are in a kiln that was lit. */
export type InKiln = {
  readonly position: number;
  readonly pieces: number;
  readonly kilnId: string;
  readonly litOn: Day;
};

/** An open job as it is written down. */
export type JobInLoad = {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly technique: Technique;
  readonly pieces: number;
  readonly wanted: number;
  readonly steps: readonly RouteStep[];
  readonly moves: readonly Move[];
  readonly inKilns: readonly InKiln[];
  readonly size: KnownSize;
  /** Of the piece of the stock list that it is made for. */
  readonly skuSize: KnownSize | null;
  /** Its own day, else the one that was promised. */
  readonly neededOn: Day | null;
  readonly commission: {
    readonly id: string;
    readonly number: number;
    readonly collector: string;
    readonly begin: BeginFacts;
  } | null;
};

/** Everything that the days of the open jobs are worked out from. */
export type LoadFacts = {
  readonly todayOn: Day;
  /** 1 is Monday. */
  readonly closedWeekdays: readonly number[];
  readonly dryingPercents: readonly number[];
  readonly promiseInHundred: number;
  readonly roomAroundUm: number;
  /** Within how many days an answer of a collector is expected. */
  readonly answerDays: number;
  readonly benches: readonly BenchFacts[];
  readonly kilns: readonly KilnFacts[];
  readonly closed: readonly ClosedSpan[];
  readonly losses: LossCounts;
  readonly jobs: readonly JobInLoad[];
};

/** What left a step or was lost there, by technique and the step's name. */
export type LossCounts = ReadonlyMap<string, Counted>;

/** How {@link LossCounts} names a step of a technique. */
export function lossKey(technique: Technique, step: string): string {
  return `${technique} ${step}`;
}
