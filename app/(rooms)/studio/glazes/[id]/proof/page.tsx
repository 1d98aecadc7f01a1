import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { PictureField } from '@/app/(rooms)/commissions/picture-field';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { wareHints, wareKinds, wareWords } from '@/lib/glazes/rules/food';
import { cautionsFor } from '@/lib/studio/rules/kilns/cautions';
import { keepProof } from '../../actions';
import { readGlaze, type GlazeParams } from '../../read-glaze';

export const metadata: Metadata = { title: 'A leach test' };

const wares = wareKinds.map((ware) => ({
  value: ware,
  label: wareWords[ware],
  hint: wareHints[ware],
}));

/** A laboratory's leach test of one recipe, as its report has it. */
export default async function ProofPage({ params }: Readonly<{ params: GlazeParams }>) {
  const actor = await requireActor('studio.keep');
  const { glaze, today } = await readGlaze(actor, params);
  const [latest] = glaze.recipes;
  if (!latest) redirect(`/studio/glazes/${glaze.id}/recipe`);
  return (
    <>
      <PageHead
        title={`A leach test of ${glaze.name}`}
        back={{ href: `/studio/glazes/${glaze.id}`, name: glaze.name }}
        lead="As it stands on the laboratory’s report; it is never changed after."
      />
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      <FormFrame action={keepProof} label="A leach test">
        <RequestKey />
        <input type="hidden" name="glazeId" value={glaze.id} />
        <Field
          name="recipeId"
          label="Which recipe was tested"
          kind="select"
          options={glaze.recipes.map(({ id, version }) => ({
            value: id,
            label: `recipe ${version}`,
          }))}
          defaultValue={latest.id}
          width="half"
        />
        <Field name="laboratory" label="Laboratory" width="half" maxLength={120} required />
        <Field name="reportNumber" label="Number of its report" width="half" optional />
        <Field name="testedOn" label="Tested on" kind="day" width="short" defaultValue={today} />
        <Choice name="ware" legend="On what" options={wares} defaultValue="" layout="down" />
        <Field
          name="lead"
          label="Lead on each piece, mg/L"
          hint="Six pieces, with spaces between; <0.02 where none was seen."
          placeholder="0.12 0.1 <0.02 0.1 0.11 0.1"
        />
        <Field
          name="cadmium"
          label="Cadmium on each piece, mg/L"
          hint="The same pieces, in the same order."
          placeholder="<0.02 <0.02 <0.02 <0.02 <0.02 <0.02"
        />
        <PictureField name="picture" label="A picture of the report" optional />
        <SubmitButton size="counter" pendingText="Writing it down…">
          Write it down
        </SubmitButton>
      </FormFrame>
      {cautionsFor('selling_ware').map(({ key, words }) => (
        <Caution key={key}>{words}</Caution>
      ))}
    </>
  );
}
