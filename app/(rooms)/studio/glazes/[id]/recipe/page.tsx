import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { keepRecipe } from '../../actions';
import { RecipeFields } from '../../fields';
import { readGlaze, type GlazeParams } from '../../read-glaze';

export const metadata: Metadata = { title: 'A recipe' };

/** Another version of a glaze's recipe, begun from the latest. */
export default async function RecipePage({ params }: Readonly<{ params: GlazeParams }>) {
  const actor = await requireActor('studio.keep');
  const { glaze } = await readGlaze(actor, params);
  const [latest] = glaze.recipes;
  return (
    <>
      <PageHead
        title={
          latest ? `Recipe ${latest.version + 1} of ${glaze.name}` : `The recipe of ${glaze.name}`
        }
        back={{ href: `/studio/glazes/${glaze.id}`, name: glaze.name }}
        lead={latest ? `Version ${latest.version} stays in the book beside it.` : undefined}
      />
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      {latest?.food.use === 'proven' ? (
        <Notice kind="caution">
          Version {latest.version} was tested for food. A new version is not for food until it is
          tested itself.
        </Notice>
      ) : null}
      <FormFrame action={keepRecipe} label="Write the recipe down">
        <RequestKey />
        <input type="hidden" name="glazeId" value={glaze.id} />
        <RecipeFields materials={latest?.materials ?? []} />
        <Field
          name="note"
          label="Why it is another"
          hint="A material that was replaced, a fault that it mends."
          maxLength={600}
          optional
        />
        <SubmitButton size="counter">Write it down</SubmitButton>
      </FormFrame>
    </>
  );
}
