import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { readTileChoices } from '@/lib/glazes/reads/tiles';
import { keepTile } from '../../actions';
import { LaidOn, LooksFields } from '../../fields';
import { readGlaze, type GlazeParams } from '../../read-glaze';
import { FiringField } from '../../tile-fields';

export const metadata: Metadata = { title: 'A test tile' };

/** A test tile of a glaze; what came of it can be told later. */
export default async function NewTile({ params }: Readonly<{ params: GlazeParams }>) {
  const actor = await requireActor('studio.keep');
  const { glaze, today } = await readGlaze(actor, params);
  const { bodies, firings } = await readTileChoices(actor);
  const [latest] = glaze.recipes;
  return (
    <>
      <PageHead
        title={`A test tile of ${glaze.name}`}
        back={{ href: `/studio/glazes/${glaze.id}`, name: glaze.name }}
        lead="It gets the next number: write that on its back before it is glazed."
      />
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      <FormFrame action={keepTile} label="A test tile">
        <RequestKey />
        <input type="hidden" name="glazeId" value={glaze.id} />
        <Field
          name="recipeId"
          label="Recipe"
          kind="select"
          options={[
            { value: '', label: 'not known' },
            ...glaze.recipes.map(({ id, version }) => ({ value: id, label: `recipe ${version}` })),
          ]}
          defaultValue={latest?.id ?? ''}
          width="half"
        />
        <Field
          name="bodyId"
          label="Clay body"
          kind="select"
          options={[
            { value: '', label: 'not known' },
            ...bodies.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          defaultValue=""
          width="half"
        />
        <LaidOn cone={glaze.cone} coats={glaze.coats} />
        <Field name="madeOn" label="Made on" kind="day" width="short" defaultValue={today} />
        <FiringField firings={firings} chosen="" />
        <LooksFields lab={null} />
        <Field name="note" label="What was found" kind="textarea" rows={3} optional />
        <SubmitButton size="counter" pendingText="Writing it down…">
          Write it down
        </SubmitButton>
      </FormFrame>
    </>
  );
}
