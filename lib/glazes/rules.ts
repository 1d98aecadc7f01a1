import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { leachRefusalMessage, type LeachRefusal } from '@/lib/clay/rules/leach';
import { formatDay, type Day } from '@/lib/dates/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';
import { recipeRefusalMessage, type RecipeRefusal } from './rules/recipe';

/** No facts besides its name. */
type Nothing = unknown;

/** The facts that explain each refusal of the glaze book. */
type GlazeRefusalFacts = {
  key_used_for_something_else: Nothing;
  picture_not_kept: { readonly picture: PictureRefusal };
  unknown_glaze: Nothing;
  glaze_name_taken: { readonly name: string };
  recipe_not_taken: { readonly recipe: RecipeRefusal };
  recipe_is_the_same: { readonly version: number };
  unknown_recipe: Nothing;
  test_not_taken: { readonly test: LeachRefusal };
  unknown_body: Nothing;
  unknown_firing: Nothing;
  firing_of_another_cone: { readonly cone: string };
  unknown_tile: Nothing;
  day_to_come: { readonly on: Day };
};

type Code = keyof GlazeRefusalFacts;
type OfTheBook<Which extends Code = Code> = {
  [One in Which]: { readonly code: One } & GlazeRefusalFacts[One];
}[Which];

/** Why something was not written into the glaze book. */
export type GlazeRefusal = NotAllowed | OfTheBook;

type Sentence<Which extends Code> = (facts: GlazeRefusalFacts[Which]) => string;

const sentences: { readonly [One in Code]: Sentence<One> } = {
  key_used_for_something_else: () =>
    'This page was sent before with something else in it. Load it again, please.',
  picture_not_kept: ({ picture }) => pictureRefusalMessage(picture),
  unknown_glaze: () => 'That glaze is not in the book.',
  glaze_name_taken: ({ name }) =>
    `${name} is in the book already. Write a new version of its recipe, or give this one a name of its own.`,
  recipe_not_taken: ({ recipe }) => recipeRefusalMessage(recipe),
  recipe_is_the_same: ({ version }) =>
    `That is version ${version} as it stands. Change something, or leave it.`,
  unknown_recipe: () => 'Choose one of this glaze’s recipes.',
  test_not_taken: ({ test }) => leachRefusalMessage(test),
  unknown_body: () => 'That clay body is not in the list. Choose it once more.',
  unknown_firing: () =>
    'That firing is not in the log, or was not opened yet. Choose it once more.',
  firing_of_another_cone: ({ cone }) =>
    `That firing went to cone ${cone}. Choose its cone for the tile, or another firing.`,
  unknown_tile: () => 'That test tile is not in the book.',
  day_to_come: ({ on }) =>
    `${formatDay(on, 'short')} is still to come. Write the day on which it was done.`,
};

/** Says in a full sentence why something was not written into the glaze book. */
export function glazeRefusalMessage(refusal: GlazeRefusal): string {
  return refusal.code === 'not_allowed' ? notAllowedMessage(refusal) : say(refusal);
}

function say<Which extends Code>(refusal: OfTheBook<Which>): string {
  const sentence: Sentence<Which> = sentences[refusal.code];
  return sentence(refusal);
}

const fields: Partial<Record<Code, string>> = {
  glaze_name_taken: 'name',
  recipe_not_taken: 'base',
  recipe_is_the_same: 'base',
  unknown_recipe: 'recipeId',
  unknown_body: 'bodyId',
  unknown_firing: 'firingId',
  firing_of_another_cone: 'firingId',
};
const testFields: Readonly<Record<LeachRefusal['code'], string>> = {
  no_laboratory: 'laboratory',
  tested_later_than_today: 'testedOn',
  too_few_tested: 'lead',
  not_a_reading: 'lead',
};

/** The field of a form at which a refusal is told; undefined where it is for the whole form. */
export function glazeRefusalField(refusal: GlazeRefusal): string | undefined {
  if (refusal.code === 'not_allowed') return undefined;
  return refusal.code === 'test_not_taken' ? testFields[refusal.test.code] : fields[refusal.code];
}
