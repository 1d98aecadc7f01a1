/** How a glaze looks: where it is thin, where it pools, and what shows where it breaks on an edge. */
export type Glaze = Readonly<{ thin: string; pool: string; breaks: string }>;

/** A colourway: the glaze of the ground, that of the drawing, and how they take the light. */
export type Colourway = Readonly<{
  key: string;
  name: string;
  description: string;
  ground: Glaze;
  drawing: Glaze;
  /** 0 dry and stony, 1 wet gloss. */
  gloss: number;
  /** How freely the glaze moves in the fire: pooling and streaks. */
  runs: number;
  /** Iron specks out of the clay. */
  specks: number;
  /** L*, a*, b* of the light, middle and dark of its range, where the studio measured them. */
  measured?: Readonly<Record<'light' | 'middle' | 'dark', readonly [string, string, string]>>;
}>;

/** The colourways of the studio. */
export const colourways: readonly Colourway[] = [
  {
    key: 'celadon',
    name: 'Celadon over iron slip',
    description: 'A clear grey-green that pools jade in the cuts; the drawing is dark with iron.',
    ground: { thin: '#c2cdb6', pool: '#718f7c', breaks: '#b08d66' },
    drawing: { thin: '#7d8163', pool: '#3d4f42', breaks: '#8d5a35' },
    gloss: 0.85,
    runs: 0.7,
    specks: 0.25,
  },
  {
    key: 'moon',
    name: 'Moon white',
    description: 'A quiet satin white, warm where the clay comes through on the edges.',
    ground: { thin: '#ebe3d3', pool: '#d9d6cb', breaks: '#c7a07a' },
    drawing: { thin: '#f1ebdf', pool: '#cfcabb', breaks: '#bb8e64' },
    gloss: 0.3,
    runs: 0.35,
    specks: 0.5,
  },
  {
    key: 'tenmoku',
    name: 'Tenmoku',
    description: 'Black as wet slate, breaking to rust wherever the clay turns to the light.',
    ground: { thin: '#43271a', pool: '#160f0d', breaks: '#a8592b' },
    drawing: { thin: '#80431f', pool: '#2a1610', breaks: '#bf6f35' },
    gloss: 1,
    runs: 0.6,
    specks: 0,
  },
  {
    key: 'cobalt',
    name: 'Cobalt pool',
    description: 'Grey-blue on the heights, deep as the inlet where it gathers.',
    ground: { thin: '#7c99b3', pool: '#15356b', breaks: '#c4b7a2' },
    drawing: { thin: '#c9d3d6', pool: '#5f86a8', breaks: '#d3c3aa' },
    gloss: 0.9,
    runs: 0.9,
    specks: 0.1,
  },
  {
    key: 'copper',
    name: 'Copper moss',
    description: 'The green of wet moss over bark brown, no two alike.',
    ground: { thin: '#8e9873', pool: '#4a6450', breaks: '#6a4c33' },
    drawing: { thin: '#a57a52', pool: '#4f5b3b', breaks: '#5b3b28' },
    gloss: 0.55,
    runs: 0.8,
    specks: 0.35,
    measured: {
      light: ['58.4', '-9.2', '17.6'],
      middle: ['48.1', '-8.3', '14.9'],
      dark: ['38.6', '-6.8', '11.2'],
    },
  },
  {
    key: 'ash',
    name: 'Beach ash',
    description: 'Driftwood ash, straw to olive, that runs in small rivers.',
    ground: { thin: '#cdbd97', pool: '#8f8c5a', breaks: '#a57f55' },
    drawing: { thin: '#96795a', pool: '#4f4a33', breaks: '#7a5237' },
    gloss: 0.5,
    runs: 1,
    specks: 0.4,
  },
  {
    key: 'shell',
    name: 'Shell',
    description: 'A fat milky white, flushed orange where it lies thin.',
    ground: { thin: '#e3b692', pool: '#f0e4d6', breaks: '#b4623a' },
    drawing: { thin: '#d99d76', pool: '#f3e9dd', breaks: '#a9532f' },
    gloss: 0.45,
    runs: 0.3,
    specks: 0.3,
  },
  {
    key: 'slate',
    name: 'Rain slate',
    description: 'A dry stone grey, blue in the wet; the drawing is bare pale clay.',
    ground: { thin: '#7b8288', pool: '#4a545d', breaks: '#a79c8d' },
    drawing: { thin: '#c8b79e', pool: '#a08f78', breaks: '#d8c9b1' },
    gloss: 0.12,
    runs: 0.3,
    specks: 0.6,
  },
  {
    key: 'amber',
    name: 'Kelp amber',
    description: 'Honey brown and clear, like kelp held up against the sun.',
    ground: { thin: '#cf9f55', pool: '#7d4a1e', breaks: '#d8b67c' },
    drawing: { thin: '#8a6a2e', pool: '#40311a', breaks: '#b98945' },
    gloss: 0.95,
    runs: 0.85,
    specks: 0.1,
  },
];

/**
 * The colourway of that key.
 *
 * @throws Error when there is none: the seed names only colourways of this list
 */
export function colourwayOf(key: string): Colourway {
  const found = colourways.find((colourway) => colourway.key === key);
  if (!found) throw new Error(`There is no colourway ${key}.`);
  return found;
}
