import type { AppointmentKind } from '@/lib/installation/rules/diary/kinds';
import type { WallKind } from '@/lib/commissions/rules/words';

/** The parts of the day, in their order. */
export const workStages = ['before', 'there', 'fixings', 'piece', 'hand_over'] as const;

/** One of the {@link workStages}. */
export type WorkStage = (typeof workStages)[number];

/** Each as it stands over its ticks. */
export const stageTitles: Readonly<Record<WorkStage, string>> = {
  before: 'Before leaving',
  there: 'At the place',
  fixings: 'The fixings',
  piece: 'The piece',
  hand_over: 'The hand-over',
};

/** On what it depends which ticks a day has; null is "not known". */
export type WorkFacts = {
  readonly kind: AppointmentKind;
  readonly weightG: number | null;
  readonly wall: WallKind | null;
  readonly isOutdoors: boolean;
  /** A bed, a crib, a sofa or a way is under it. */
  readonly isOverPeople: boolean;
  readonly quakes: boolean;
};
