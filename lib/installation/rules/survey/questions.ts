import type { WallFacts } from '@/lib/walls/rules/plan/wall';

/** What of a survey is asked about before somebody hangs something; null is "not known yet". */
export type SurveyFacts = WallFacts & {
  readonly provedHow: string;
  readonly agreedMiddleUm: number | null;
  readonly freezes: boolean | null;
  readonly access: string;
  readonly steps: number | null;
  readonly narrowWidthUm: number | null;
  readonly narrowHeightUm: number | null;
  readonly floor: string;
  readonly hasOutlet: boolean | null;
  readonly people: string;
};

type Question = { readonly words: string; readonly isOpen: (facts: SurveyFacts) => boolean };

const isFramed = ({ wall }: SurveyFacts) =>
  wall === 'wood_studs' || wall === 'steel_studs' || wall === 'plaster_on_lath';
const hasStuds = (facts: SurveyFacts) => isFramed(facts) && facts.hasBacking !== true;

const questions: readonly Question[] = [
  { words: 'what the wall is made of', isOpen: ({ wall }) => wall === null },
  {
    words: 'how that was proved',
    isOpen: (facts) => facts.wall !== null && facts.provedHow === '',
  },
  {
    words: 'how far apart the studs are',
    isOpen: (facts) => hasStuds(facts) && facts.studSpacingUm === null,
  },
  {
    words: 'where the first stud is',
    isOpen: (facts) => hasStuds(facts) && facts.firstStudUm === null,
  },
  {
    words: 'what the studs are sawn from',
    isOpen: (facts) => hasStuds(facts) && facts.wall !== 'steel_studs' && facts.studWood === null,
  },
  {
    words: 'the gauge of the steel',
    isOpen: (facts) => facts.wall === 'steel_studs' && facts.steelGauge === null,
  },
  {
    words: 'how thick the board or plaster is',
    isOpen: (facts) => isFramed(facts) && facts.coverUm === null,
  },
  {
    words: 'whether the plaster is sound',
    isOpen: (facts) => facts.wall === 'plaster_on_lath' && facts.isPlasterSound === null,
  },
  { words: 'how high the ceiling is', isOpen: ({ ceilingUm }) => ceilingUm === null },
  { words: 'how wide the wall is', isOpen: ({ wallWidthUm }) => wallWidthUm === null },
  { words: 'where wires and pipes are', isOpen: ({ servicesSought }) => servicesSought !== true },
  { words: 'how high its middle was agreed', isOpen: (facts) => facts.agreedMiddleUm === null },
  { words: 'indoors or outside', isOpen: ({ isOutdoors }) => isOutdoors === null },
  {
    words: 'whether it freezes',
    isOpen: (facts) => facts.isOutdoors === true && facts.freezes === null,
  },
  { words: 'whether people are below it', isOpen: ({ isOverPeople }) => isOverPeople === null },
  { words: 'whether the ground quakes', isOpen: ({ quakes }) => quakes === null },
  { words: 'the way in', isOpen: ({ access }) => access === '' },
  { words: 'how many steps', isOpen: ({ steps }) => steps === null },
  {
    words: 'the narrowest place on the way',
    isOpen: (facts) => facts.narrowWidthUm === null || facts.narrowHeightUm === null,
  },
  { words: 'what the floor is', isOpen: ({ floor }) => floor === '' },
  { words: 'whether there is an outlet', isOpen: ({ hasOutlet }) => hasOutlet === null },
  { words: 'who lets one in', isOpen: ({ people }) => people === '' },
];

/**
 * What is still to be asked of a wall, in the order in which one looks.
 *
 * Studs are asked for only where there are some, frost only outdoors.
 *
 * @source common practice: what goes wrong where nobody asked
 * @example nothing known has 14 things open, the wall first
 */
export function stillToLook(facts: SurveyFacts): string[] {
  return questions.filter(({ isOpen }) => isOpen(facts)).map(({ words }) => words);
}
