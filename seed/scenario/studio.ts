import type { LossCause, Technique } from '@/lib/studio/rules';

const inch = 25_400;

/** How the demo studio works; invented. */
export const ways = {
  closedWeekdays: [7],
  dryingPercents: [135, 130, 115, 105, 95, 85, 80, 80, 90, 105, 125, 135],
  promiseInHundred: 80,
  startInHundred: '95',
  roomAroundUm: 6_350,
  centsPerHour: 2_600n,
  overheadPercent: '20',
  glazeCentsPerM2: 2_400n,
  degrees: 'F',
} as const;

const cones = ['04', '05', '6'] as const;

/** The kilns of the demo studio; invented. */
export const kilns = [
  {
    ...{ name: 'Old Ember', insideHeightUm: 27 * inch, shelfWidthUm: 21 * inch },
    ...{ shelfDepthUm: 21 * inch, shelfThickUm: 15_875, shelves: 8, powerW: 11_520 },
    ...{ centsPerKwh: '14.2', wearCents: 550n, cones, turnsAWeek: 2 },
    ...{ leastFillPercent: 40, longestWaitDays: 5, openBelowC: 93, elementFirings: 150 },
    note: 'Runs a little cool at the bottom shelf: witness cones there.',
  },
  {
    ...{ name: 'Little Spark', insideHeightUm: 18 * inch, shelfWidthUm: 15 * inch },
    ...{ shelfDepthUm: 15 * inch, shelfThickUm: 12_700, shelves: 4, powerW: 5_760 },
    ...{ centsPerKwh: '14.2', wearCents: 300n, cones, turnsAWeek: 2 },
    ...{ leastFillPercent: 40, longestWaitDays: 5, openBelowC: 93, elementFirings: 180 },
    note: '',
  },
] as const;

/** What went wrong with pieces of a past job in one of its firings. */
export type WentWrong = {
  lost?: number;
  second?: number;
  fireAgain?: number;
  cause?: LossCause;
  note?: string;
};

/** A job that the studio finished: what was made, and what the kilns did to it. */
export type PastJob = {
  title: string;
  technique: Exclude<Technique, 'slab_relief'>;
  begun: number;
  wanted: number;
  /** How many days ago its clay was begun. */
  daysAgo: number;
  /** Lost while drying. */
  cracked: number;
  bisque: WentWrong;
  glaze: WentWrong;
  size: { widthUm: number; heightUm: number; depthUm: number };
};

const tile = (inches: number) => ({
  widthUm: inches * inch,
  heightUm: inches * inch,
  depthUm: 19_050,
});
const bowl = { widthUm: 6 * inch, heightUm: 6 * inch, depthUm: 3 * inch };

/** What the demo studio made for its own showings over the last months; invented. */
export const pastJobs: readonly PastJob[] = [
  {
    ...{ title: 'Alder catkin tiles for the spring wall', technique: 'press_moulded' },
    ...{ begun: 28, wanted: 24, daysAgo: 214, cracked: 2, size: tile(5) },
    bisque: { lost: 1, cause: 'steam', note: 'The one from the damp corner.' },
    glaze: { second: 2 },
  },
  {
    ...{ title: 'Barnacle bowls', technique: 'thrown' },
    ...{ begun: 20, wanted: 16, daysAgo: 189, cracked: 1, size: bowl },
    bisque: {},
    glaze: { lost: 2, cause: 'glaze_fault', note: 'Crawled at the rim.' },
  },
  {
    ...{ title: 'Salmonberry tiles', technique: 'slip_cast' },
    ...{ begun: 30, wanted: 24, daysAgo: 163, cracked: 3, size: tile(4) },
    bisque: { lost: 1, cause: 'joint' },
    glaze: { fireAgain: 3, note: 'Dull on the bottom shelf.' },
  },
  {
    ...{ title: 'Mossy step samplers', technique: 'press_moulded' },
    ...{ begun: 26, wanted: 22, daysAgo: 136, cracked: 1, size: tile(5) },
    bisque: {},
    glaze: { lost: 1, cause: 'shelf', second: 1 },
  },
  {
    ...{ title: 'Drift cups without handles', technique: 'thrown' },
    ...{ begun: 24, wanted: 20, daysAgo: 108, cracked: 2, size: bowl },
    bisque: { lost: 1, cause: 'steam' },
    glaze: { second: 3 },
  },
  {
    ...{ title: 'Sea star tiles for the autumn wall', technique: 'slip_cast' },
    ...{ begun: 32, wanted: 26, daysAgo: 80, cracked: 2, size: tile(4) },
    bisque: { lost: 2, cause: 'kiln_over', note: 'The sitter stuck.' },
    glaze: {},
  },
];
