import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { bringPictures } from '../../actions';
import { PictureField } from '../../picture-field';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'Add pictures' };

/** Pictures that came later. */
export default async function AddPicturesPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'pictures');
  return (
    <ActPage sheet={sheet} title="Add pictures" lead="The wall, a colour, something they loved.">
      <FormFrame action={bringPictures} label="Add pictures">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <PictureField name="pictures" label="Pictures" several />
        <Field name="caption" label="What they show" optional />
        <SubmitButton pendingText="Bringing them in…">Add them to the request</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
