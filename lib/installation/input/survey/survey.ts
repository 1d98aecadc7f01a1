import { z } from 'zod';
import { known, pictures } from '@/lib/commissions/input/atoms';
import { knownYesNo } from '@/lib/commissions/input/enquiry/answers';
import { dayInput } from '@/lib/dates/input';
import {
  obstacleField,
  obstacleFields,
  obstaclesMost,
} from '@/lib/installation/rules/survey/obstacle-fields';
import { lengthInput } from '@/lib/units/input';
import { studWoods } from '@/lib/walls/rules/fixings/screws';
import { obstacleKinds, wallKinds, type Obstacle } from '@/lib/walls/rules/plan/wall';
import {
  inOwnUnits,
  knownLength,
  knownLengthOrNothing,
  knownWhole,
  lengthOrNothing,
  words,
} from './typed';

const metre = 1_000_000;
const tooLong = 'That is longer than a wall is. Write it once more.';
const tooThick = 'That is thicker than a wall is. Write it once more.';

/** What a survey asks; every field may be left open: "not known yet". */
const surveyFields = {
  wall: known(z.enum(wallKinds, { error: 'Choose what the wall is made of.' })),
  provedHow: words(300),
  studWood: known(z.enum(studWoods, { error: 'Choose the wood of the studs.' })),
  studSpacingUm: knownLength(2 * metre, 'Studs stand at most 78 in apart.'),
  firstStudUm: knownLengthOrNothing(30 * metre, tooLong),
  studWidthUm: knownLength(0.5 * metre, tooThick),
  studDepthUm: knownLength(metre, tooThick),
  steelGauge: knownWhole(1, 40, 'A gauge is a whole number from 1 to 40; larger is thinner.'),
  coverUm: knownLengthOrNothing(metre, tooThick),
  isPlasterSound: knownYesNo,
  hasBacking: knownYesNo,
  backing: words(300),
  wallWidthUm: knownLength(100 * metre, tooLong),
  ceilingUm: knownLength(30 * metre, 'That is higher than a room is. Write it once more.'),
  outOfPlumbUm: knownLengthOrNothing(metre, tooThick),
  furnitureUm: knownLengthOrNothing(10 * metre, 'Furniture is not as high as that.'),
  servicesSought: knownYesNo,
  services: words(600),
  isOutdoors: knownYesNo,
  freezes: knownYesNo,
  isOverPeople: knownYesNo,
  quakes: knownYesNo,
  heat: words(300),
  access: words(600),
  steps: knownWhole(0, 1_000, 'Write how many steps, from 0 to 1000.'),
  narrowWidthUm: knownLength(20 * metre, tooLong),
  narrowHeightUm: knownLength(20 * metre, tooLong),
  lift: words(300),
  floor: words(300),
  hasOutlet: knownYesNo,
  people: words(600),
  building: words(600),
  note: words(2_000),
  agreedMiddleUm: knownLength(30 * metre, tooLong),
  surveyedOn: dayInput,
};

const surveyShape = z.object(surveyFields);

/** A survey as a form tells it: lengths in micrometres, null is "not known yet". */
export type SurveySaid = z.output<typeof surveyShape>;

const obstacle = z.object({
  kind: z.enum(obstacleKinds, { error: 'Choose what it is.' }),
  words: words(120),
  leftUm: lengthOrNothing,
  bottomUm: lengthOrNothing,
  widthUm: lengthInput,
  heightUm: lengthInput,
});

/**
 * The form of a survey. What is on the wall comes in rows `o0-kind`, `o0-leftUm` and so on; a row
 * without a kind and without measures is none. Pictures of the survey before stay when they are
 * ticked.
 */
export const keepSurveyInput = z.preprocess(
  inOwnUnits,
  z
    .looseObject({
      requestKey: z.uuid(),
      commissionId: z.uuid(),
      /** The version that was looked at; 0 when there was none. */
      seenVersion: z
        .string()
        .regex(/^\d{1,6}$/)
        .transform(Number),
      keptPictures: z
        .preprocess(
          (ticked) => (typeof ticked === 'string' ? [ticked] : ticked),
          z.array(z.uuid()).max(60),
        )
        .prefault([]),
      pictures,
    })
    .transform((form, context) => {
      const { requestKey, commissionId, seenVersion, keptPictures, pictures: added } = form;
      const read = surveyShape.safeParse(form);
      for (const { path, message } of read.error?.issues ?? []) {
        context.addIssue({ code: 'custom', path: [...path], message });
      }
      const obstacles = obstaclesOf(form, context);
      const odd = Object.keys(form).find((name) => !isAsked(name));
      if (odd !== undefined) {
        context.addIssue({ code: 'custom', path: [odd], message: 'This is not asked for here.' });
      }
      if (!read.success) return z.NEVER;
      const told = { requestKey, commissionId, seenVersion, keptPictures, pictures: added };
      return { ...told, survey: read.data, obstacles };
    }),
);

/** What {@link keepSurveyInput} reads. */
export type KeepSurveyInput = z.output<typeof keepSurveyInput>;

const besides = ['requestKey', 'commissionId', 'seenVersion', 'keptPictures', 'pictures'];

/** Every field that a survey asks is one of the form's; its rows are named by their number. */
function isAsked(name: string): boolean {
  return name in surveyFields || besides.includes(name) || /^(o\d+-|rows$)/.test(name);
}

function obstaclesOf(
  form: Readonly<Record<string, unknown>>,
  context: z.core.$RefinementCtx,
): Obstacle[] {
  const rows = Array.from({ length: obstaclesMost }, (_, row) => row);
  return rows.flatMap((row) => {
    const typed = obstacleFields.map((field) => [field, form[obstacleField(row, field)]] as const);
    if (typed.every(([, value]) => value === undefined || value === '')) return [];
    const read = obstacle.safeParse(Object.fromEntries(typed));
    if (read.success) return [read.data];
    for (const { path, message } of read.error.issues) {
      context.addIssue({ code: 'custom', path: [`o${row}-${String(path[0])}`], message });
    }
    return [];
  });
}
