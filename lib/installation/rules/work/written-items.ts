import type { AppointmentKind } from '@/lib/installation/rules/diary/kinds';
import type { WallKind } from '@/lib/commissions/rules/words';
import type { WorkFacts, WorkStage } from './stages';
import { handsWords } from './hands';

/** A tick as it is written down: in which part of which days, and its words. */
export type WrittenItem = Readonly<{
  stage: WorkStage;
  kinds: readonly AppointmentKind[];
  words: string | ((facts: WorkFacts) => string);
  caution?: string | ((facts: WorkFacts) => string | null);
  when?: (facts: WorkFacts) => boolean;
}>;

const all: readonly AppointmentKind[] = [
  'hanging',
  'delivery',
  'site_visit',
  'fetching',
  'after_care',
];
const carried: readonly AppointmentKind[] = ['hanging', 'delivery', 'fetching'];
const brought: readonly AppointmentKind[] = ['hanging', 'delivery'];
const hung: readonly AppointmentKind[] = ['hanging'];

/** Every tick, under its key, in the order in which they are done. */
export const writtenItems = {
  piece_whole: {
    ...{ stage: 'before', kinds: carried },
    words: 'The piece was looked over: nothing is loose, cracked or chipped',
  },
  piece_packed: {
    ...{ stage: 'before', kinds: carried },
    words: 'It is padded and tied so that it cannot move',
    caution: 'Padding is not the aim, not moving is. Nothing touches the relief.',
  },
  fixings_loaded: {
    ...{ stage: 'before', kinds: hung },
    words: 'Cleats, spacer, stop screw and fixings are in the van, by the plan',
  },
  tools_loaded: { stage: 'before', kinds: hung, words: 'The tools are in the van' },
  spares_loaded: {
    ...{ stage: 'before', kinds: hung },
    words: 'Spare pieces, glaze notes and touch-up are in the van',
  },
  papers_loaded: {
    ...{ stage: 'before', kinds: carried },
    words: 'Certificate and care sheet are along',
  },
  called_ahead: {
    ...{ stage: 'before', kinds: all.filter((kind) => kind !== 'fetching') },
    words: 'Whoever lets us in was called, and is there',
  },
  weather_seen: {
    ...{ stage: 'before', kinds: brought },
    words: 'Weather and road allow it',
    caution:
      'No fresh adhesive in a cold van: most of it needs more than 40 to 50 °F. No ladder in wind.',
  },
  way_clear: {
    ...{ stage: 'there', kinds: brought },
    words: 'The way in is clear, and the floor is covered',
  },
  room_ready: {
    ...{ stage: 'there', kinds: hung },
    words: 'The room is as it was asked for',
  },
  wall_as_surveyed: {
    ...{ stage: 'there', kinds: hung },
    words: 'The wall is what the survey says it is',
    caution:
      'If it is not, stop. No piece goes on a wall that nobody has proved: local codes and a licensed contractor decide.',
  },
  services_marked: {
    ...{ stage: 'there', kinds: hung },
    words: 'Wires and pipes were looked for, and are marked',
    caution:
      'Nobody drills where a wire, a gas pipe or water may run. What has to be moved is a licensed trade’s.',
  },
  dust_kept: {
    ...{ stage: 'there', kinds: hung, when: ({ wall }: WorkFacts) => isDusty(wall) },
    words: 'A vacuum is held at the hole, and masks and glasses are on',
    caution: ({ wall }: WorkFacts) =>
      wall === 'plaster_on_lath'
        ? 'Fine dust of plaster and sand scars the lungs. In a house from before 1978 the paint may hold lead: certified practice.'
        : 'Fine dust of brick, block and concrete scars the lungs for good. A slab may hold cables under tension: not without a scan.',
  },
  wall_written: {
    ...{ stage: 'there', kinds: ['site_visit'] },
    words: 'Wall, way in and measures are written on the survey',
    caution: '“It felt solid” is not an answer. What is not known stays “not known yet”.',
  },
  wall_pictured: {
    ...{ stage: 'there', kinds: ['site_visit'] },
    words: 'Pictures were taken: the wall whole, its corners, the way in',
    caution: 'No house number, no children, and no other art without leave.',
  },
  fixings_looked: {
    ...{ stage: 'there', kinds: ['after_care'] },
    words: 'Cleat, stop screw and fixings were looked at, and nothing has moved',
    caution: 'If something lets go: make it safe, take pictures, do not tidy, and call.',
  },
  pieces_looked: {
    ...{ stage: 'there', kinds: ['after_care'] },
    words: 'No piece is loose, and no glaze has cracked or lifted',
  },
  wall_looked: {
    ...{ stage: 'there', kinds: ['after_care'] },
    words: 'The wall has no new crack beside it',
  },
  water_looked: {
    ...{ stage: 'there', kinds: ['after_care'], when: ({ isOutdoors }: WorkFacts) => isOutdoors },
    words: 'Water runs off behind it, and the sealants are whole',
  },
  holes_marked: {
    ...{ stage: 'fixings', kinds: hung },
    words: 'The holes are marked by the plan, and measured twice from the floor',
  },
  fixings_in: {
    ...{ stage: 'fixings', kinds: hung },
    words: 'All fixings are in: kind, number and depth as the plan says',
    caution: ({ wall }: WorkFacts) =>
      wall === 'steel_studs'
        ? 'No wood screws in light steel studs. A screw that turns without grip holds nothing.'
        : 'A screw that turns without grip, or a cracked block, holds nothing: move the hole and say so.',
  },
  cleat_level: {
    ...{ stage: 'fixings', kinds: hung },
    words: 'The cleat is level, and does not give under a full pull by hand',
  },
  hands_ready: {
    ...{ stage: 'piece', kinds: hung },
    words: liftWords,
    caution:
      'One says lift, and nobody lets go until the level was read. Nobody stands under it. Lift by the board, never by the relief; gloves with grip, no rings.',
  },
  seated: {
    ...{ stage: 'piece', kinds: hung },
    words: 'It sits on the cleat, heard at both ends',
  },
  spacer_in: {
    ...{ stage: 'piece', kinds: hung },
    words: 'The lower spacer is in, and the piece stands off the wall evenly',
  },
  stop_screw_in: {
    ...{ stage: 'piece', kinds: hung },
    words: 'The stop screw is in, so that it cannot be lifted off',
  },
  held_below: {
    ...{
      ...{ stage: 'piece', kinds: hung },
      when: ({ isOverPeople, quakes }: WorkFacts) => isOverPeople || quakes,
    },
    words: 'It is held at the bottom as well',
    caution:
      'Over a bed, a crib, a sofa or a way, and where the ground shakes, one row of fixings is not enough.',
  },
  water_runs_off: {
    ...{ stage: 'piece', kinds: hung, when: ({ isOutdoors }: WorkFacts) => isOutdoors },
    words: 'Water runs off behind it; fixings are stainless, and nothing of wood is left',
  },
  level_read: { stage: 'piece', kinds: hung, words: 'It hangs level, and was read twice' },
  parts_counted: {
    ...{ stage: 'piece', kinds: ['delivery', 'fetching'] },
    words: 'The parts were counted and looked over together',
  },
  carried_in: {
    ...{ stage: 'piece', kinds: ['delivery'] },
    words: ({ weightG }: WorkFacts) => `It stands where it stays. ${handsWords(weightG)}`,
    caution: 'Not on the floor of a passage, and not leaning free.',
  },
  carried_out: {
    ...{ stage: 'piece', kinds: ['fetching'] },
    words: ({ weightG }: WorkFacts) =>
      `It lies in their car and cannot move. ${handsWords(weightG)}`,
  },
  wall_undamaged: {
    ...{ stage: 'hand_over', kinds: hung },
    words: 'The wall is unharmed, or what is wrong with it is written below',
  },
  care_told: {
    ...{ stage: 'hand_over', kinds: carried },
    words: 'How to look after it was told, and the care sheet given',
  },
  take_down_told: {
    ...{ stage: 'hand_over', kinds: hung },
    words: 'How it is taken down was shown',
    caution: 'Later building work, leaning and hanging on it are the owner’s to keep away.',
  },
  damage_told: {
    ...{ stage: 'hand_over', kinds: ['delivery', 'fetching'] },
    words: 'It was said that damage is told at once, with pictures, and the packing kept',
  },
  spares_left: {
    ...{ stage: 'hand_over', kinds: hung },
    words: 'Spares and glaze notes were left, or it was said that the studio keeps them',
  },
  place_clean: {
    ...{ stage: 'hand_over', kinds: brought },
    words: 'The place is clean, and nothing of ours stays behind',
  },
} as const satisfies Record<string, WrittenItem>;

function isDusty(wall: WallKind | null): boolean {
  return wall !== null && ['brick', 'block', 'concrete', 'plaster_on_lath'].includes(wall);
}

function liftWords({ weightG }: WorkFacts): string {
  return `Everybody knows where they stand and lift. ${handsWords(weightG)}`;
}
