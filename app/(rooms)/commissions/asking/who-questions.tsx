import { Field } from '@/app/ui/form/field';
import { Folded } from './folded';
import type { AskingProps } from './known';

const names = ['decides', 'pays', 'wallOwner', 'foundUs'];

/** Who says yes, who pays, and whose wall it is. */
export function WhoQuestions({ known }: AskingProps) {
  return (
    <Folded
      title="Who decides"
      about="who says yes, who pays, whose wall it is"
      names={names}
      open={known !== null}
    >
      <Field
        name="decides"
        label="Who says yes in the end"
        hint="Everyone whose yes is needed."
        defaultValue={known?.decides ?? ''}
      />
      <Field name="pays" label="Who pays" defaultValue={known?.pays ?? ''} />
      <Field
        name="wallOwner"
        label="Whose wall it is"
        hint="Theirs, a landlord’s, a house of flats, a business: the owner of the wall has to agree."
        defaultValue={known?.wallOwner ?? ''}
      />
      <Field
        name="foundUs"
        label="How they found the gallery"
        defaultValue={known?.foundUs ?? ''}
      />
    </Folded>
  );
}
