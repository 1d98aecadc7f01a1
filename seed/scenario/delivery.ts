import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import { lengthOf } from '@/seed/catalogue';

/** Who works when; who is not named here works as the gallery is open. */
export const hours: Readonly<Record<'maker' | 'seller', Readonly<Record<string, string>>>> = {
  maker: Object.fromEntries(
    [1, 2, 3, 4, 5].flatMap((day) => [
      [`from.${day}`, '08:00'],
      [`to.${day}`, '16:30'],
    ]),
  ),
  seller: Object.fromEntries(
    [2, 3, 4, 5, 6].flatMap((day) => [
      [`from.${day}`, '09:30'],
      [`to.${day}`, '18:00'],
    ]),
  ),
};

/** When somebody of the gallery is away, from today. */
export const absent = { fromInDays: 20, days: 4, why: 'The crossing to see his sister' } as const;

/** Ways that somebody drove and timed. */
export const ways = [
  { from: '3 Ferry Slip Row, Harrow Inlet', to: '41 Millrace Lane, Harrow Inlet', minutes: '10' },
  { from: '17 Weir Lane, Cedar Reach', to: '240 Upper Reach Road, Cedar Reach', minutes: '15' },
] as const;

/** What is still to be put right of what hangs. */
export const snags = [
  {
    title: 'Hemlock screen',
    words: 'A hairline in the paint beside the third panel: touch up with the hotel’s own.',
    mendInDays: 6,
  },
] as const;

/** Something that goes by a carrier. */
export type Parcel = {
  toName: string;
  toAddress: string;
  carrier: string;
  rule: string;
  insuredCents: bigint;
  note: string;
  /** As it is typed: one line each. */
  pieces: string;
  tracking: string;
  sentDaysAgo: number;
  state: 'to pack' | 'sent' | 'arrived';
};

/** What goes by a carrier these days. */
export const parcels: readonly Parcel[] = [
  {
    ...{ toName: 'The Lantern House Inn', toAddress: '2 Breakwater Road, Port Quill' },
    ...{ carrier: 'Inlet Road Freight', rule: 'Freight on a pallet, by class' },
    ...{ insuredCents: 310_000n, tracking: 'IRF 204 118', sentDaysAgo: 9, state: 'arrived' },
    note: 'Lift-gate, and somebody there to take it.',
    pieces: '1 × Heron panel for the stair; 48 × 24 × 2 1/2 in; 62 lb',
  },
  {
    ...{ toName: 'Yusra Lindqvist', toAddress: '90 Foghorn Lane, Skerry Bay' },
    ...{ carrier: 'Coast Parcels', rule: 'Parcel by road, by size 139' },
    ...{ insuredCents: 54_000n, tracking: 'CP 88 301 552', sentDaysAgo: 2, state: 'sent' },
    note: '',
    pieces:
      '6 × Tern over shoals; 6 × 6 × 5/8 in; 1 lb 9 oz\n2 × Sword fern; 10 × 10 × 3/4 in; 5 lb',
  },
  {
    ...{ toName: 'Caspian Doyle', toAddress: '4 Ropewalk, Port Quill' },
    ...{ carrier: 'Coast Parcels', rule: 'Parcel by road, by size 139' },
    ...{ insuredCents: 22_000n, tracking: '', sentDaysAgo: 1, state: 'to pack' },
    note: 'Ring before: he works nights.',
    pieces: '1 × Lamp base, barnacle; 14 × 9 × 9 in; 8 lb',
  },
];

/** A wall that is to be tiled, with set tiles among field tile. */
export const tiledWall: { title: string; asked: TileWallAsked } = {
  title: 'Behind the long table, to the window',
  asked: {
    ...{ widthUm: lengthOf('96 in'), heightUm: lengthOf('36 in') },
    ...{ tileWidthUm: lengthOf('6 in'), tileHeightUm: lengthOf('6 in') },
    ...{ jointUm: lengthOf('3/16 in'), variationUm: lengthOf('1/16 in'), isHandMade: true },
    ...{ rowsFrom: 'bottom', sparePercent: '10', setSparePercent: '20', places: ['water'] },
    sets: [
      { name: 'Heron at low water', across: 2, down: 2, column: 3, row: 2 },
      { name: 'Tern over shoals', across: 1, down: 1, column: 8, row: 3 },
      { name: 'Tern over shoals', across: 1, down: 1, column: 9, row: 4 },
      { name: 'Sword fern', across: 1, down: 1, column: 13, row: 4 },
    ],
    openings: [
      {
        ...{ kind: 'outlet', leftUm: lengthOf('70 in'), bottomUm: lengthOf('8 in') },
        ...{ widthUm: lengthOf('3 in'), heightUm: lengthOf('5 in') },
      },
    ],
  },
};
