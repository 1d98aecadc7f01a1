import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { skuInput } from '../input';
import { editionMost, proofsMost } from '../rules/edition';
import { lifeMost, mouldFaces, mouldKinds } from '../rules/moulds';

const whole = (least: number, most: number, words: string) =>
  z
    .string()
    .trim()
    .regex(/^\d{1,6}$/, words)
    .transform(Number)
    .refine((count) => count >= least && count <= most, words);

const kind = z.enum(mouldKinds, { error: 'Choose what it is for.' });
const fromId = z
  .union([z.literal('').transform(() => null), z.uuid()], { error: 'Choose it once more.' })
  .prefault('');
const slipMl = z.union([
  z.literal('').transform(() => null),
  whole(1, 100_000, 'Write how many millilitres one cast takes, such as 660.'),
]);

/** A mould, written down. */
export const addMouldInput = z.object({
  requestKey: z.uuid(),
  code: skuInput,
  designId: z.uuid('Choose the design it gives.'),
  lifeCasts: whole(1, lifeMost, `Write how many casts it is trusted for, 1 to ${lifeMost}.`),
  begunWith: z.union([
    z.literal('').transform(() => 0),
    whole(0, lifeMost, `Write how many casts it has given already, 0 to ${lifeMost}.`),
  ]),
  madeOn: dayInput,
  kind: kind.default('working'),
  fromId,
  slipMl: slipMl.prefault(''),
  note: z.string().trim().max(500, 'Say it in fewer words.').default(''),
});

/** What {@link addMouldInput} reads. */
export type AddMouldInput = z.output<typeof addMouldInput>;

/** Casts that were poured or pressed. */
export const recordCastsInput = z.object({
  requestKey: z.uuid(),
  mouldId: z.uuid(),
  casts: whole(1, 500, 'Write how many casts, 1 to 500.'),
  on: dayInput,
});

/** What {@link recordCastsInput} reads. */
export type RecordCastsInput = z.output<typeof recordCastsInput>;

/** What is known of a mould beside its casts. */
export const changeMouldInput = z.object({
  requestKey: z.uuid(),
  mouldId: z.uuid(),
  kind,
  fromId,
  slipMl,
  lifeCasts: whole(1, lifeMost, `Write how many casts it is trusted for, 1 to ${lifeMost}.`),
  note: z.string().trim().max(500, 'Say it in fewer words.').default(''),
});

/** What {@link changeMouldInput} reads. */
export type ChangeMouldInput = z.output<typeof changeMouldInput>;

/** A look at the face of a mould. */
export const lookAtMouldInput = z.object({
  requestKey: z.uuid(),
  mouldId: z.uuid(),
  face: z.enum(mouldFaces, { error: 'Choose how its face looks.' }),
  lookedOn: dayInput,
  note: z.string().trim().max(500, 'Say it in fewer words.').default(''),
});

/** What {@link lookAtMouldInput} reads. */
export type LookAtMouldInput = z.output<typeof lookAtMouldInput>;

/** A mould that is taken out of use. */
export const retireMouldInput = z.object({ requestKey: z.uuid(), mouldId: z.uuid() });

/** What {@link retireMouldInput} reads. */
export type RetireMouldInput = z.output<typeof retireMouldInput>;

/** An edition, stated once before its first piece comes. */
export const stateEditionInput = z.object({
  requestKey: z.uuid(),
  skuId: z.uuid(),
  size: whole(1, editionMost, `Write how many the edition has, 1 to ${editionMost}.`),
  artistProofs: z.union([
    z.literal('').transform(() => 0),
    whole(0, proofsMost, `Write how many artist’s proofs there are, 0 to ${proofsMost}.`),
  ]),
  mouldId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
});

/** What {@link stateEditionInput} reads. */
export type StateEditionInput = z.output<typeof stateEditionInput>;
