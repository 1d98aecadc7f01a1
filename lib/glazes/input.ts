import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { wareKinds } from './rules/food';
import { readTypedRecipe, typedRecipeRefusalMessage } from './rules/typed-recipe';

/** The most coats that are brushed one over another. */
export const coatsMost = 20;

const requestKey = z.uuid();
const glazeId = z.uuid();
const words = (most: number) =>
  z.string().trim().max(most, `Keep it to ${most} letters.`).prefault('');
const named = (fault: string, most: number) =>
  z.string().trim().min(1, fault).max(most, `Keep it to ${most} letters.`);

/** A field that may be left empty: then it is null; anything else goes to the schema. */
function orEmpty<Schema extends z.ZodType>(schema: Schema) {
  return z
    .string()
    .trim()
    .transform((text, context): z.output<Schema> | null => {
      if (text === '') return null;
      const read = schema.safeParse(text);
      if (read.success) return read.data;
      for (const { message } of read.error.issues) context.addIssue({ code: 'custom', message });
      return z.NEVER;
    })
    .prefault('');
}

/** A cone by its name: 022 to 01, and 1 to 14. */
const cone = z
  .string()
  .trim()
  .regex(
    /^(?:0(?:[1-9]|1\d|2[0-2])|[1-9]|1[0-4])$/,
    'Choose a cone, such as 6 or 04: they are far apart.',
  );
const coats = z
  .string()
  .trim()
  .regex(/^\d{1,2}$/, `Write how many coats, 1 to ${coatsMost}.`)
  .transform(Number)
  .refine((count) => count >= 1 && count <= coatsMost, `Write how many coats, 1 to ${coatsMost}.`);

/** L*, a*, b* as one types them from an instrument, spaces or commas between; empty for not measured. */
const lab = orEmpty(
  z
    .string()
    .regex(
      /^-?\d{1,3}(\.\d{1,3})?[\s,;]+-?\d{1,3}(\.\d{1,3})?[\s,;]+-?\d{1,3}(\.\d{1,3})?$/,
      'Write three figures: L*, a*, b*, such as 52.1 -3.4 8.',
    )
    .transform((text) => text.split(/[\s,;]+/))
    .refine(isColour, 'L* goes from 0 to 100, the others from -160 to 160.')
    .transform(([l = '0', a = '0', b = '0']) => [l, a, b] as const),
);

function isColour([l, a, b]: string[]): boolean {
  const away = Math.max(Math.abs(Number(a)), Math.abs(Number(b)));
  return Number(l) >= 0 && Number(l) <= 100 && away <= 160;
}

const picture = z.instanceof(Blob, { error: 'Choose a picture.' }).optional();

/** A recipe as it is typed, one material in each line with its amount at the end. */
const typedRecipe = z
  .string()
  .max(4_000, 'Keep it to 4,000 letters.')
  .prefault('')
  .transform((text, context) => {
    const read = readTypedRecipe(text);
    if (read.ok) return read.value;
    context.addIssue({ code: 'custom', message: typedRecipeRefusalMessage(read.refusal) });
    return z.NEVER;
  });

const looks = {
  name: named('Give the glaze a name.', 80),
  cone,
  coats,
  note: words(1_000),
  lab,
  raw: picture,
  fired: picture,
};

/** The form that writes a glaze into the book, with its first recipe where that is known. */
export const addGlazeInput = z.strictObject({
  requestKey,
  ...looks,
  base: typedRecipe,
  additions: typedRecipe,
});

/** The form that changes what is known of a glaze; pictures stay where none is chosen. */
export const changeGlazeInput = z.strictObject({
  requestKey,
  glazeId,
  ...looks,
  endedOn: orEmpty(dayInput),
});

/** The form that writes another version of a recipe. */
export const writeRecipeInput = z.strictObject({
  requestKey,
  glazeId,
  base: typedRecipe,
  additions: typedRecipe,
  note: words(600),
});

/** What a laboratory found, one reading after another: `0.12 <0.02 0.1`. */
const readings = z
  .string()
  .max(400, 'Keep it to 400 letters.')
  .transform((text) =>
    text
      .replaceAll(/<\s+/g, '<')
      .split(/[\s,;]+/)
      .filter(Boolean),
  )
  .refine((found) => found.length >= 1 && found.length <= 12, {
    message: 'Write what was found on each piece, with spaces between, at most twelve.',
  })
  .refine((found) => found.every((each) => /^<?\d{1,4}(\.\d{1,4})?$/.test(each)), {
    message: 'Write each in mg in a litre, such as 0.12, or <0.02 where none was seen.',
  });

/** The form that writes down a laboratory's leach test of a recipe. */
export const writeProofInput = z
  .strictObject({
    requestKey,
    glazeId,
    recipeId: z.uuid('Choose the recipe that was tested.'),
    testedOn: dayInput,
    laboratory: named('Write which laboratory tested it.', 120),
    reportNumber: words(80),
    ware: z.enum(wareKinds, { error: 'Choose what kind of ware was tested.' }),
    lead: readings,
    cadmium: readings,
    picture,
  })
  .refine(({ lead, cadmium }) => lead.length === cadmium.length, {
    path: ['cadmium'],
    message: 'Write as many for cadmium as for lead: both were found on the same pieces.',
  });

const chosen = orEmpty(z.uuid('Choose it once more.'));
const tileLooks = {
  firingId: chosen,
  lab,
  note: words(1_000),
  raw: picture,
  fired: picture,
};

/** The form that writes a test tile down. */
export const addTileInput = z.strictObject({
  requestKey,
  glazeId,
  recipeId: chosen,
  bodyId: chosen,
  cone,
  coats,
  madeOn: dayInput,
  ...tileLooks,
});

/** The form that says what became of a test tile. */
export const tellTileInput = z.strictObject({ requestKey, tileId: z.uuid(), ...tileLooks });

/** How much dry glaze is to be weighed out, from the address of a page. */
export const dryWeightInput = z
  .string()
  .trim()
  .regex(/^\d{1,6}$/)
  .transform(Number);

/** What {@link addGlazeInput} reads. */
export type AddGlazeInput = z.output<typeof addGlazeInput>;
/** What {@link changeGlazeInput} reads. */
export type ChangeGlazeInput = z.output<typeof changeGlazeInput>;
/** What {@link writeRecipeInput} reads. */
export type WriteRecipeInput = z.output<typeof writeRecipeInput>;
/** What {@link writeProofInput} reads. */
export type WriteProofInput = z.output<typeof writeProofInput>;
/** What {@link addTileInput} reads. */
export type AddTileInput = z.output<typeof addTileInput>;
/** What {@link tellTileInput} reads. */
export type TellTileInput = z.output<typeof tellTileInput>;
