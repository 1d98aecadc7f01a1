import { describe, expect, test } from 'vitest';
import { keepPlanInput } from '@/lib/installation/input/plan/plan';
import { keepSurveyInput } from '@/lib/installation/input/survey/survey';
import { isHeavierThanPlanned, weightWords } from '@/lib/installation/rules/plan/weight-words';
import { plannedWeightWords } from '@/lib/installation/rules/plan/weight-words';
import { surveyCautions } from '@/lib/installation/rules/survey/cautions';
import { stillToLook, type SurveyFacts } from '@/lib/installation/rules/survey/questions';
import { wallKinds } from '@/lib/walls/rules/plan/wall';
import { wallKinds as askedKinds } from '@/lib/commissions/rules/words';
import { inches, pounds } from '../../walls/a-wall';

const nothing: SurveyFacts = {
  ...{ wall: null, studWood: null, studSpacingUm: null, firstStudUm: null, studDepthUm: null },
  ...{ steelGauge: null, coverUm: null, isPlasterSound: null, hasBacking: null },
  ...{ wallWidthUm: null, ceilingUm: null, furnitureUm: null, servicesSought: null },
  ...{ isOutdoors: null, isOverPeople: null, quakes: null, obstacles: [], provedHow: '' },
  ...{ agreedMiddleUm: null, freezes: null, access: '', steps: null, narrowWidthUm: null },
  ...{ narrowHeightUm: null, floor: '', hasOutlet: null, people: '' },
};
const everything: SurveyFacts = {
  ...{ wall: 'wood_studs', studWood: 'hem_fir', studSpacingUm: 1, firstStudUm: 0, studDepthUm: 1 },
  ...{ steelGauge: null, coverUm: 0, isPlasterSound: null, hasBacking: false },
  ...{ wallWidthUm: 1, ceilingUm: 1, furnitureUm: 0, servicesSought: true },
  ...{ isOutdoors: false, isOverPeople: false, quakes: false, obstacles: [], provedHow: 'magnet' },
  ...{ agreedMiddleUm: 1, freezes: null, access: 'a step', steps: 0, narrowWidthUm: inches(30) },
  ...{ narrowHeightUm: inches(78), floor: 'oak', hasOutlet: true, people: 'they are in' },
};

test('the walls of a request and of a survey are the same', () => {
  expect([...wallKinds].toSorted()).toEqual([...askedKinds].toSorted());
});

describe('what is still to be looked at', () => {
  test('of nothing known, the wall comes first', () => {
    const open = stillToLook(nothing);
    expect(open[0]).toBe('what the wall is made of');
    expect(open).toHaveLength(14);
  });

  test('of everything known, nothing', () => {
    expect(stillToLook(everything)).toEqual([]);
  });

  test.each<[Partial<SurveyFacts>, string]>([
    [{ provedHow: '' }, 'how that was proved'],
    [{ studSpacingUm: null }, 'how far apart the studs are'],
    [{ studWood: null }, 'what the studs are sawn from'],
    [{ wall: 'steel_studs' }, 'the gauge of the steel'],
    [{ wall: 'plaster_on_lath' }, 'whether the plaster is sound'],
    [{ servicesSought: false }, 'where wires and pipes are'],
    [{ isOutdoors: true }, 'whether it freezes'],
    [{ narrowHeightUm: null }, 'the narrowest place on the way'],
  ])('%o leaves open %s', (facts, words) => {
    expect(stillToLook({ ...everything, ...facts })).toEqual([words]);
  });

  test('studs are not asked for in brick, nor behind wood that was built in', () => {
    const open = { ...everything, studSpacingUm: null, firstStudUm: null, studWood: null };
    expect(stillToLook({ ...open, wall: 'brick', coverUm: null })).toEqual([]);
    expect(stillToLook({ ...open, hasBacking: true })).toEqual([]);
  });
});

describe('what is minded of a wall', () => {
  const carried = { widthUm: inches(48), heightUm: inches(30) };
  const cautions = (facts: Partial<SurveyFacts>, heat = '') =>
    surveyCautions({ ...everything, heat, ...facts }, carried, 'in').join(' ');

  test('nothing, where nothing is to be minded', () => {
    expect(cautions({})).toBe('');
  });

  test.each<[Partial<SurveyFacts>, RegExp]>([
    [{ wall: null }, /^Stop: nobody knows yet/],
    [{ wall: 'gypsum_board' }, /Board alone holds nothing heavy/],
    [{ wall: 'steel_studs' }, /have wood put in/],
    [{ wall: 'plaster_on_lath' }, /never hammer/],
    [{ servicesSought: null }, /were not looked for/],
    [{ isOverPeople: true }, /four times over/],
    [{ quakes: true }, /second fixing at the bottom/],
    [{ isOutdoors: true }, /all metal stainless/],
    [
      { narrowWidthUm: inches(28), narrowHeightUm: inches(33) },
      /takes 34 in at its narrower side, and the narrowest place on the way is 28 in by 33 in/,
    ],
  ])('%o', (facts, words) => {
    expect(cautions(facts)).toMatch(words);
  });

  test('heat near it, and a way that nobody measured is not judged', () => {
    expect(cautions({}, 'a range')).toMatch(/licensed setter decide/);
    expect(cautions({ narrowWidthUm: inches(20), narrowHeightUm: null })).toBe('');
  });
});

const ids = {
  ...{ requestKey: '0190a1a0-0000-7000-8000-000000000001' },
  commissionId: '0190a1a0-0000-7000-8000-000000000002',
};

describe('the form of a survey', () => {
  const read = (fields: Record<string, unknown>) =>
    keepSurveyInput.safeParse({ ...ids, seenVersion: '0', surveyedOn: '2026-05-12', ...fields });
  const faults = (fields: Record<string, unknown>) =>
    (read(fields).error?.issues ?? []).map(({ path }) => path.join('.'));

  test('takes nothing at all as not known', () => {
    expect(read({}).data?.survey).toMatchObject({ wall: null, ceilingUm: null, provedHow: '' });
  });

  test('reads bare numbers in the unit of the gallery, and 0 where there may be none', () => {
    const inMm = read({ lengthUnit: 'mm', ceilingUm: '2440', wallWidthUm: '12 ft', coverUm: '0' });
    expect(inMm.data?.survey).toMatchObject({
      ...{ ceilingUm: 2_440_000, wallWidthUm: 3_657_600, coverUm: 0 },
    });
    expect(read({ lengthUnit: 'in', ceilingUm: '96' }).data?.survey.ceilingUm).toBe(inches(96));
  });

  test.each<[string, Record<string, unknown>, string]>([
    ['a ceiling of nothing', { ceilingUm: '0' }, 'ceilingUm'],
    ['a ceiling of a hundred metres', { ceilingUm: '100 m' }, 'ceilingUm'],
    ['studs in words', { studSpacingUm: 'a foot or so' }, 'studSpacingUm'],
    ['a wall of straw', { wall: 'straw' }, 'wall'],
    ['a gauge of 0', { steelGauge: '0' }, 'steelGauge'],
    ['half a step', { steps: '1.5' }, 'steps'],
    ['a day that is none', { surveyedOn: '2026-02-30' }, 'surveyedOn'],
    ['a thing without its measures', { 'o0-kind': 'pipe', 'o0-leftUm': '4' }, 'o0-bottomUm'],
    ['measures of nothing', { 'o3-kind': '', 'o3-leftUm': '4' }, 'o3-kind'],
    ['what is not asked', { colour: 'blue' }, 'colour'],
  ])('tells of %s at its field', (_what, fields, at) => {
    expect(faults(fields)).toContain(at);
  });
});

describe('the form of a plan', () => {
  const form = {
    ...{ ...ids, surveyId: ids.commissionId, lengthUnit: 'in' },
    ...{ widthUm: '48', heightUm: '30', depthUm: '2', weightG: '100', middleUm: '72' },
    ...{ heightBy: 'eye', eyeUm: '57', made: 'plywood', thicknessUm: '3/4', cleatHeightUm: '3.5' },
    ...{ fromTopUm: '5', bevelDeg: '45', by: 'screw', screw: 'no_12', screwLengthUm: '3.5' },
    safetyFactor: '3',
  };
  const faults = (fields: Record<string, unknown>) =>
    (keepPlanInput.safeParse({ ...form, ...fields }).error?.issues ?? []).map(({ path }) =>
      path.join('.'),
    );

  test('is read as it is asked', () => {
    const { asked } = keepPlanInput.parse(form);
    expect(asked.piece).toMatchObject({ widthUm: inches(48), weightG: pounds(100) });
    expect(asked.hanging.fixing).toEqual({
      ...{ by: 'screw', screw: 'no_12', lengthUm: inches(3.5), isStainless: false },
      perUpright: null,
    });
  });

  test('in millimetres and kilograms a bare number means those', () => {
    const metric = { ...form, lengthUnit: 'mm', widthUm: '1220', weightG: '45', thicknessUm: '19' };
    const { piece, hanging } = keepPlanInput.parse(metric).asked;
    expect([piece.widthUm, piece.weightG]).toEqual([1_220_000, 45_000]);
    expect(hanging.cleat.thicknessUm).toBe(19_000);
  });

  test.each<[string, Record<string, unknown>, string]>([
    ['no weight', { weightG: '0' }, 'weightG'],
    ['a weight in words', { weightG: 'heavy' }, 'weightG'],
    ['an absurd weight', { weightG: '999999 kg' }, 'weightG'],
    ['no width', { widthUm: '' }, 'widthUm'],
    ['eye height open', { eyeUm: '' }, 'eyeUm'],
    ['furniture without its gap', { heightBy: 'furniture', topUm: '34' }, 'gapUm'],
    ['an anchor without its rating', { by: 'anchor', anchor: 'sleeve' }, 'ratedPullG'],
    ['a bevel past upright', { bevelDeg: '80' }, 'bevelDeg'],
    ['once over', { safetyFactor: '1' }, 'safetyFactor'],
    ['no screw at all', { perUpright: '0' }, 'perUpright'],
  ])('tells of %s at its field', (_what, fields, at) => {
    expect(faults(fields)).toContain(at);
  });
});

describe('what it weighs, in words', () => {
  const scale = { weightG: pounds(98), from: 'scale', on: '2026-05-12' } as const;
  const guess = { weightG: pounds(98), from: 'estimate', on: null } as const;

  test('says from what that is known', () => {
    expect(weightWords(scale, 'in')).toBe('98 lb, from the scale on 12 May 2026');
    expect(weightWords(guess, 'in')).toMatch(/^about 98 lb, reckoned from its size: weigh it/);
    expect(weightWords({ ...guess, from: 'proposal' }, 'mm')).toMatch(/^about 44.5 kg, as it was/);
  });

  test('a scale that says more than was planned makes the plan old, a guess does not', () => {
    expect(isHeavierThanPlanned(pounds(90), scale)).toBe(true);
    expect(isHeavierThanPlanned(pounds(98), scale)).toBe(false);
    expect(isHeavierThanPlanned(pounds(90), guess)).toBe(false);
    expect(isHeavierThanPlanned(pounds(90), null)).toBe(false);
  });

  test('a plan says what it was reckoned with and what is known', () => {
    expect(plannedWeightWords(pounds(98), scale, 'in')).toBe(weightWords(scale, 'in'));
    expect(plannedWeightWords(pounds(100), scale, 'in')).toMatch(
      /^100 lb as planned; known: 98 lb/,
    );
    expect(plannedWeightWords(pounds(100), null, 'in')).toMatch(/weigh it before/);
  });
});
