/** A moment of the work at which something is to be minded. */
export type Moment =
  | 'loading'
  | 'firing'
  | 'opening'
  | 'unloading'
  | 'putting_in_a_kiln'
  | 'mixing_dry'
  | 'sanding'
  | 'cleaning'
  | 'glazing'
  | 'selling_ware';

/** A caution of the studio: what to mind, where, and what it rests on. */
export type StudioCaution = {
  readonly key:
    | 'steam'
    | 'silica'
    | 'fumes'
    | 'heat'
    | 'electrician'
    | 'metals'
    | 'not_for_food'
    | 'sharp_edges';
  readonly at: readonly Moment[];
  readonly words: string;
  readonly basis: string;
};

const practice = 'Common practice; the maker’s instructions and the local code go before it.';

/**
 * What to mind in the studio. They remind; the makers' instructions, the local code and people with
 * the licence decide.
 *
 * @source common practice unless a basis names a rule
 */
export const studioCautions: readonly StudioCaution[] = [
  {
    key: 'steam',
    at: ['loading'],
    words:
      'Is it bone dry? What is cold to the cheek is wet, and steam breaks the piece and those ' +
      'beside it. Warm thick work for hours first, and leave no hollow without a hole.',
    basis: practice,
  },
  {
    key: 'silica',
    at: ['mixing_dry', 'sanding', 'cleaning'],
    words:
      'Fine silica harms the lungs for good and cannot be seen. Wipe and mop wet, never sweep, and ' +
      'wear a respirator that fits for anything dry.',
    basis:
      'OSHA, 29 CFR 1910.1053: 50 micrograms in a cubic metre over eight hours, action from 25 ' +
      '(from memory).',
  },
  {
    key: 'fumes',
    at: ['firing'],
    words:
      'A firing gives off fumes: run the ventilation the kiln’s maker asks for, and keep a smoke ' +
      'and carbon monoxide alarm in the room.',
    basis: practice,
  },
  {
    key: 'heat',
    at: ['firing', 'opening'],
    words:
      'Nothing that burns stands near, and the lid stays shut until the kiln is below its maker’s ' +
      'limit.',
    basis: practice,
  },
  {
    key: 'electrician',
    at: ['putting_in_a_kiln'],
    words:
      'Wiring, breaker and clearances are a licensed electrician’s, by the kiln’s plate and the ' +
      'local code.',
    basis: practice,
  },
  {
    key: 'metals',
    at: ['mixing_dry', 'glazing'],
    words:
      'Raw glazes may hold lead, cadmium, barium, manganese or copper. Read the maker’s safety ' +
      'sheet, wear gloves, and nothing is eaten where they are used.',
    basis: practice,
  },
  {
    key: 'not_for_food',
    at: ['glazing', 'selling_ware'],
    words:
      'Not for food until a laboratory’s leach test of this clay, glaze and firing says otherwise. ' +
      'Whoever advises the studio says what else the law of the place asks for.',
    basis: 'FDA CPG 545.400 and 545.450; 21 CFR 109.16 for ware that only looks fit for food.',
  },
  {
    key: 'sharp_edges',
    at: ['unloading'],
    words:
      'Fired edges and drips of glaze cut: gloves, and eyes covered when anything is ground off.',
    basis: practice,
  },
];

/** What to mind at a moment, in their order. */
export function cautionsFor(moment: Moment): readonly StudioCaution[] {
  return studioCautions.filter((caution) => caution.at.includes(moment));
}
