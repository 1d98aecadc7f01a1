import { z } from 'zod';
import { known, lines, onePicture, saidLine } from '@/lib/commissions/input/atoms';
import { signatureFields, type SignatureInput } from '@/lib/commissions/input/signature';
import { placeNames, places } from '@/lib/commissions/rules/colours/places';
import { approvalWays } from '@/lib/commissions/rules/words';
import { dayInput } from '@/lib/dates/input';

const requestKey = z.uuid();
const commissionId = z.uuid();
const contentSha256 = z.string().regex(/^[0-9a-f]{64}$/, 'Look at the sheet again first.');
const what = z.enum(['sketch', 'colour_tile']);
const shortLine = z.string().trim().max(120, 'Keep it to 120 letters.').optional();

/** The most colour areas that a form of a sketch offers. */
export const areasMost = 6;
/** The most spots that can be marked at once. */
export const spotsMost = 4;

const areaName = z.string().trim().max(60, 'Keep it to 60 letters.').optional();
const areaPlace = z.enum(placeNames).optional();

/** The form that shows a sketch; an area is its name and one of nine places. */
export const showSketchInput = z
  .strictObject({
    requestKey,
    commissionId,
    picture: onePicture,
    note: lines,
    scale: shortLine,
    shownOn: dayInput,
    ...{ areaName1: areaName, areaPlace1: areaPlace, areaName2: areaName, areaPlace2: areaPlace },
    ...{ areaName3: areaName, areaPlace3: areaPlace, areaName4: areaName, areaPlace4: areaPlace },
    ...{ areaName5: areaName, areaPlace5: areaPlace, areaName6: areaName, areaPlace6: areaPlace },
  })
  .transform(({ requestKey: key, commissionId: of, picture, note, scale, shownOn, ...form }) => ({
    ...{ requestKey: key, commissionId: of, picture, note, scale, shownOn },
    areas: [
      areaOf(form.areaName1, form.areaPlace1),
      areaOf(form.areaName2, form.areaPlace2),
      areaOf(form.areaName3, form.areaPlace3),
      areaOf(form.areaName4, form.areaPlace4),
      areaOf(form.areaName5, form.areaPlace5),
      areaOf(form.areaName6, form.areaPlace6),
    ].filter((area) => area !== null),
  }));

function areaOf(name: string | undefined, place: keyof typeof places | undefined) {
  if (name === undefined || name === '') return null;
  const { xPermille, yPermille } = places[place ?? 'middle'];
  return { name, xPermille, yPermille };
}

const labText = z
  .string()
  .regex(
    /^\s*-?\d{1,3}(\.\d{1,3})?[\s,;]+-?\d{1,3}(\.\d{1,3})?[\s,;]+-?\d{1,3}(\.\d{1,3})?\s*$/,
    'Three figures: L*, a*, b*, such as 52.1 -3.4 8.',
  )
  .transform((text) => text.trim().split(/[\s,;]+/))
  .refine(([l = '', a = '', b = '']) => inLab(Number(l), Number(a), Number(b)), {
    message: 'L* goes from 0 to 100, the others from -160 to 160.',
  })
  .transform(([l = '0', a = '0', b = '0']) => [l, a, b] as const);

/** L*, a*, b* as one types them from an instrument, spaces or commas between; empty for not measured. */
const measured = known(labText).optional();

function inLab(l: number, a: number, b: number): boolean {
  return l >= 0 && l <= 100 && Math.abs(a) <= 160 && Math.abs(b) <= 160;
}

/** The form that shows a colour tile: fired as a range, each measured where there is an instrument. */
export const showColourTileInput = z.strictObject({
  requestKey,
  commissionId,
  picture: onePicture,
  lightPicture: onePicture.optional(),
  darkPicture: onePicture.optional(),
  glazes: saidLine('Write the glazes in order, as on the back of the tile.', 400),
  bodyId: known(z.uuid()).optional(),
  coats: known(
    z
      .string()
      .regex(/^\d{1,2}$/, 'How many coats, in figures.')
      .transform(Number),
  ).optional(),
  cone: z
    .string()
    .trim()
    .regex(/^(0?\d{1,2})?$/, 'A cone such as 6 or 04.')
    .optional(),
  firing: shortLine,
  batchId: known(z.uuid()).optional(),
  keptAt: shortLine,
  /** The names of the areas it is for, with commas between. */
  forAreas: z.string().trim().max(300, 'Keep it to 300 letters.').optional(),
  light: measured,
  middle: measured,
  dark: measured,
  shownOn: dayInput,
});

/** The form that writes down a yes; the hash says what was looked at. */
export const approveInput = z.strictObject({
  requestKey,
  commissionId,
  what,
  shownId: z.uuid(),
  contentSha256,
  approvedBy: saidLine('Write who said yes.'),
  how: z.enum(approvalWays, { error: 'Say how the yes was given.' }),
  approvedOn: dayInput,
  light: shortLine,
});

/** The form by which somebody says yes themselves, and signs: on their page, or on our screen. */
export const signYesInput = z.strictObject({
  requestKey,
  commissionId,
  what,
  shownId: z.uuid(),
  contentSha256,
  light: shortLine,
  /** Ticked for a colour: looked at in the hand. */
  seenInHand: z.enum(['yes', 'no']).optional(),
  ...signatureFields,
});

const spotWords = z.string().trim().max(400, 'Keep it to 400 letters.').optional();
const spotAt = z
  .union([z.literal(''), z.string().regex(/^\d{1,4}$/)])
  .optional()
  .transform((text) => (text === undefined || text === '' ? null : Math.min(1000, Number(text))));

const roundSigned = z.object(signatureFields).partial();
const roundSignature = roundSigned.shape;

/** The form that asks for changes: up to four spots with words, words alone, and what a round costs. */
export const askForChangesInput = z
  .strictObject({
    requestKey,
    commissionId,
    what,
    shownId: z.uuid(),
    contentSha256,
    words: lines,
    ...{ spotWords1: spotWords, spotX1: spotAt, spotY1: spotAt },
    ...{ spotWords2: spotWords, spotX2: spotAt, spotY2: spotAt },
    ...{ spotWords3: spotWords, spotX3: spotAt, spotY3: spotAt },
    ...{ spotWords4: spotWords, spotX4: spotAt, spotY4: spotAt },
    askedBy: saidLine('Write who asks for it.', 120),
    how: z.enum(approvalWays).optional(),
    /** Ticked: what the further round costs is agreed. */
    agreesFee: z.enum(['yes', 'no']).optional(),
    /** The name under what the further round costs, where it is asked before the gallery. */
    ...roundSignature,
  })
  .transform((form) => {
    const { requestKey: key, commissionId: of, shownId, words, askedBy, how, agreesFee } = form;
    const spots = [
      spotOf(form.spotWords1, form.spotX1, form.spotY1),
      spotOf(form.spotWords2, form.spotX2, form.spotY2),
      spotOf(form.spotWords3, form.spotX3, form.spotY3),
      spotOf(form.spotWords4, form.spotX4, form.spotY4),
    ].filter((spot) => spot !== null);
    return {
      ...{ requestKey: key, commissionId: of, shownId, what: form.what },
      ...{ contentSha256: form.contentSha256, words, spots, askedBy, how },
      agreesFee: agreesFee === 'yes',
      signature: signatureOf(form),
    };
  });

function signatureOf({
  signedName,
  signedCapacity = '',
  signedAs,
  drawing = '',
}: z.output<typeof roundSigned>): SignatureInput | null {
  if (signedAs === undefined || signedName === undefined) return null;
  return { signedName, signedCapacity, signedAs, drawing };
}

function spotOf(words: string | undefined, x: number | null, y: number | null) {
  const isMarked = x !== null && y !== null;
  if (words === undefined || words === '') return null;
  return { words, xPermille: isMarked ? x : 500, yPermille: isMarked ? y : 500 };
}

/** The form that gives the twin of a tile to the collector. */
export const giveTwinInput = z.strictObject({
  requestKey,
  commissionId,
  tileId: z.uuid(),
  how: saidLine('Say how: handed over, sent by mail.', 120),
  givenOn: dayInput,
});

/** The form that holds a fired part against its tile. */
export const measureFiredInput = z.strictObject({
  requestKey,
  commissionId,
  tileId: z.uuid(),
  where: saidLine('Say which part was measured.', 120),
  lab: labText,
  firing: shortLine,
});

/** What showing a sketch takes. */
export type ShowSketchInput = Omit<SketchShown, 'areas' | 'scale'> &
  Partial<Pick<SketchShown, 'areas' | 'scale'>>;
type SketchShown = z.output<typeof showSketchInput>;

/** What showing a colour tile takes. */
export type ShowColourTileInput = z.output<typeof showColourTileInput>;

/** What writing down a yes takes. */
export type ApproveInput = z.output<typeof approveInput>;

/** What saying yes and signing takes. */
export type SignYesInput = z.output<typeof signYesInput>;

/** What asking for changes takes. */
export type AskForChangesInput = z.output<typeof askForChangesInput>;

/** What giving a twin takes. */
export type GiveTwinInput = z.output<typeof giveTwinInput>;

/** What measuring a fired part takes. */
export type MeasureFiredInput = z.output<typeof measureFiredInput>;
