import type { WareKind } from '@/lib/clay/rules/leach';

/** A test tile of the demo: how far its colour is from the glaze's own. */
export type DemoTile = {
  daysAgo: number;
  coats: string;
  lab: string;
  note: string;
};

/** A leach test of the demo, of the version that it names. */
export type DemoTest = {
  version: number;
  daysAgo: number;
  ware: WareKind;
  reportNumber: string;
  lead: string;
  cadmium: string;
};

/** A glaze of the demo's book; recipes are our own, written as a notebook has them. */
export type DemoGlaze = {
  name: string;
  cone: string;
  coats: string;
  note: string;
  lab: string;
  /** The colourway of the demo that it is pictured with, and how it looks raw. */
  colourway: string;
  raw: string;
  /** Each version of its recipe, the first one first. */
  recipes: readonly { base: string; additions: string; note: string }[];
  tests: readonly DemoTest[];
  tiles: readonly DemoTile[];
  /** A bucket of its newest recipe. */
  bucket?: { number: string; daysAgo: number; weight: string };
  endedDaysAgo?: number;
};

/** The laboratory that tests for the demo. */
export const laboratory = 'Fenwick Water and Ware';

/** The glazes of the demo. */
export const glazes: readonly DemoGlaze[] = [
  {
    ...{ name: 'Low-water celadon', cone: '6', coats: '3', colourway: 'celadon', raw: '#d8c9b4' },
    note: 'Pools jade in the cuts. Thin on the heights, or the drawing drowns.',
    lab: '62.4 -7.1 9.8',
    recipes: [
      {
        base: 'Nepheline syenite 34\nSilica 24\nWollastonite 18\nBoron frit 14\nChina clay 10',
        additions: 'Red iron oxide 1.2',
        note: '',
      },
      {
        base: 'Nepheline syenite 32\nSilica 26\nWollastonite 18\nBoron frit 14\nChina clay 10',
        additions: 'Red iron oxide 1.2',
        note: 'More silica: the first one crazed on the buff clay.',
      },
    ],
    tests: [
      {
        ...{ version: 1, daysAgo: 420, ware: 'flatware', reportNumber: 'FW-1182' },
        ...{ lead: '<0.02 <0.02 <0.02 <0.02 <0.02 <0.02' },
        ...{ cadmium: '<0.01 <0.01 <0.01 <0.01 <0.01 <0.01' },
      },
    ],
    tiles: [
      { daysAgo: 96, coats: '3', lab: '61.8 -7.4 10.1', note: 'As it should be.' },
      { daysAgo: 61, coats: '2', lab: '68.9 -4.2 8.0', note: 'Two coats are too few.' },
      { daysAgo: 20, coats: '3', lab: '58.7 -9.0 11.6', note: 'From the lower shelf: greener.' },
    ],
    bucket: { number: 'LC-14', daysAgo: 34, weight: '8 kg' },
  },
  {
    ...{ name: 'Moon shell', cone: '6', coats: '2', colourway: 'moon', raw: '#e9ddd2' },
    note: 'Satin. Warm where the clay comes through; cool slowly, or it turns glassy.',
    lab: '88.1 0.9 7.4',
    recipes: [
      {
        base: 'Nepheline syenite 40\nWhiting 18\nChina clay 20\nSilica 14\nTalc 8',
        additions: 'Zircon opacifier 6\nTitanium dioxide 2',
        note: '',
      },
    ],
    tests: [
      {
        ...{ version: 1, daysAgo: 200, ware: 'cup_or_mug', reportNumber: 'FW-1240' },
        ...{ lead: '0.03 0.02 0.03 <0.02 0.02 0.03' },
        ...{ cadmium: '<0.01 <0.01 <0.01 <0.01 <0.01 <0.01' },
      },
      {
        ...{ version: 1, daysAgo: 200, ware: 'small_hollowware', reportNumber: 'FW-1241' },
        ...{ lead: '0.04 0.03 0.03 0.03 0.02 0.03' },
        ...{ cadmium: '<0.01 <0.01 <0.01 <0.01 <0.01 <0.01' },
      },
    ],
    tiles: [{ daysAgo: 48, coats: '2', lab: '87.6 1.1 7.9', note: 'Even, edge to edge.' }],
    bucket: { number: 'MS-09', daysAgo: 12, weight: '6 kg' },
  },
  {
    ...{ name: 'Wet slate', cone: '6', coats: '3', colourway: 'tenmoku', raw: '#9c4a35' },
    note: 'Breaks to rust on every edge. Keep it a finger above the foot: it runs.',
    lab: '18.6 2.2 2.9',
    recipes: [
      {
        base: 'Feldspar 46\nSilica 24\nWhiting 16\nChina clay 8\nBoron frit 6',
        additions: 'Red iron oxide 9',
        note: '',
      },
    ],
    tests: [],
    tiles: [{ daysAgo: 130, coats: '3', lab: '18.9 2.6 3.3', note: 'One run on the lower edge.' }],
  },
  {
    ...{ name: 'Inlet blue', cone: '6', coats: '3', colourway: 'cobalt', raw: '#b9a6b4' },
    note: 'Grey-blue on the heights, deep where it gathers.',
    lab: '38.2 2.8 -27.5',
    recipes: [
      {
        base: 'Nepheline syenite 36\nSilica 22\nWollastonite 20\nBoron frit 12\nChina clay 10',
        additions: 'Cobalt carbonate 1.5\nRed iron oxide 1\nTitanium dioxide 2',
        note: '',
      },
    ],
    tests: [],
    tiles: [],
  },
  {
    ...{ name: 'Rowan berry', cone: '05', coats: '2', colourway: 'moon', raw: '#d96f4c' },
    note: 'For accents in the second firing, on walls only. Its stain holds cadmium.',
    lab: '47.0 52.3 38.6',
    recipes: [
      {
        base: 'Boron frit 78\nChina clay 12\nSilica 10',
        additions: 'Encapsulated red stain 9',
        note: '',
      },
    ],
    tests: [
      {
        ...{ version: 1, daysAgo: 260, ware: 'cup_or_mug', reportNumber: 'FW-1219' },
        ...{ lead: '0.05 0.04 0.05 0.05 0.04 0.05' },
        ...{ cadmium: '0.62 0.41 0.55 0.58 0.47 0.66' },
      },
    ],
    tiles: [],
  },
  {
    ...{ name: 'Dry kelp', cone: '6', coats: '2', colourway: 'celadon', raw: '#b7b79a' },
    note: 'Stony and green. Given up for its barium.',
    lab: '51.3 -11.8 14.2',
    recipes: [
      {
        base: 'Nepheline syenite 52\nBarium carbonate 24\nChina clay 14\nSilica 10',
        additions: 'Copper carbonate 3\nManganese dioxide 1',
        note: '',
      },
    ],
    tests: [],
    tiles: [],
    endedDaysAgo: 300,
  },
];
