import type { Technique } from '@/lib/studio/rules/routes';
import type { DesignCode, FormKey } from './pieces';

/** Moulds of the demo, with what was cast lately; invented. */
export const moulds: readonly {
  code: string;
  design: DesignCode;
  lifeCasts: number;
  begunWith: number;
  madeDaysAgo: number;
  casts: readonly { daysAgo: number; count: number }[];
}[] = [
  {
    ...{ code: 'TERN-M3', design: 'TERN', lifeCasts: 100, begunWith: 61, madeDaysAgo: 420 },
    casts: [
      { daysAgo: 41, count: 12 },
      { daysAgo: 22, count: 13 },
    ],
  },
  {
    ...{ code: 'HERON-M2', design: 'HERON', lifeCasts: 60, begunWith: 0, madeDaysAgo: 120 },
    casts: [
      { daysAgo: 55, count: 14 },
      { daysAgo: 33, count: 15 },
    ],
  },
  {
    ...{ code: 'CHANT-M1', design: 'CHANT', lifeCasts: 120, begunWith: 20, madeDaysAgo: 300 },
    casts: [{ daysAgo: 15, count: 40 }],
  },
];

/** A numbered run from a mould that will not last for it. */
export const editionPiece = {
  ...{ code: 'HERON-E50', title: 'Heron at Low Water', kind: 'plaque' as const },
  ...{ width: '8 in', height: '14 in', priceCents: 24_000n, costCents: 6_200n },
  ...{ mould: 'HERON-M2', size: 50, artistProofs: 3, came: 6 },
  colourwayOf: { design: 'HERON', form: 'P' },
} as const;

/** Three small tiles that hang together. */
export const shoreSet = {
  ...{ code: 'SHORE-SET', title: 'A walk along the shore', priceCents: 11_500n },
  ...{ maySplit: 'split_at_single_price' as const, note: 'Hung in a row, left to right.' },
  members: [
    { design: 'TERN', form: '5' },
    { design: 'KELP', form: '5' },
    { design: 'OTTER', form: '5' },
  ] as const satisfies readonly { design: DesignCode; form: FormKey }[],
};

/** Flaws that were found on the shelves. */
export const flaws = [
  { design: 'STONE', form: '5', grade: 'second', flaw: 'pinholes lower left' },
  { design: 'BERRY', form: '5', grade: 'irregular', flaw: 'a shade greener than its tile' },
  { design: 'CONE', form: '5', grade: 'second', flaw: 'a chip at the back edge' },
] as const;

/** Prices that hold since a few days, and one that is to come. Cents. */
export const prices: readonly {
  design: DesignCode;
  form: FormKey;
  priceCents: bigint;
  setDaysAgo: number;
  inDays: number;
  reason: string;
}[] = [
  {
    ...{ design: 'RAIN', form: '10', priceCents: 14_400n, setDaysAgo: 9, inDays: -9 },
    reason: 'the cobalt costs more',
  },
  {
    ...{ design: 'BARN', form: '5', priceCents: 4_500n, setDaysAgo: 5, inDays: -2 },
    reason: 'it is the one people ask for',
  },
  {
    ...{ design: 'FOG', form: '10', priceCents: 14_800n, setDaysAgo: 3, inDays: 37 },
    reason: 'with the new year',
  },
];

/** A special order of the demo, and how far it has come. */
export type DemoOrder = {
  design: DesignCode;
  form: FormKey;
  quantity: number;
  technique: Technique;
  wish: string;
  askedDaysAgo: number;
  readyInDays: number;
  /** Empty when it is collected. */
  sendTo: string;
  reached: 'asked' | 'paid' | 'made' | 'told';
};

/** Special orders, each at another point of its way. */
export const orders: readonly DemoOrder[] = [
  {
    ...{ design: 'TERN', form: '10', quantity: 6, technique: 'press_moulded', askedDaysAgo: 1 },
    ...{ readyInDays: 49, sendTo: '', reached: 'asked' },
    wish: 'Two of them facing left, as on the tile by the window.',
  },
  {
    ...{ design: 'FERN', form: '5', quantity: 22, technique: 'slip_cast', askedDaysAgo: 16 },
    ...{ readyInDays: 33, sendTo: '', reached: 'paid' },
    wish: 'For the wall behind a stove; all from one batch of glaze.',
  },
  {
    ...{ design: 'HERON', form: '10', quantity: 1, technique: 'slip_cast', askedDaysAgo: 58 },
    ...{ readyInDays: -4, sendTo: '14 Tarn Lane, Upper Ness', reached: 'paid' },
    wish: 'A present; the date matters to her.',
  },
  {
    ...{ design: 'OTTER', form: '5', quantity: 4, technique: 'slip_cast', askedDaysAgo: 44 },
    ...{ readyInDays: 5, sendTo: '', reached: 'told' },
    wish: '',
  },
];
