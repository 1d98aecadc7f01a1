import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { bringSketch } from '../../actions';
import { PictureField } from '../../picture-field';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';
import { AreaFields } from './area-fields';

export const metadata = { title: 'Show a sketch' };

/** A sketch as it is shown to the collector. */
export default async function SketchPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'sketch');
  return (
    <ActPage
      sheet={sheet}
      title="Show a sketch"
      lead="It gets the next letter. A sketch shows the drawing; it does not show depth or the fired colour."
    >
      <FormFrame action={bringSketch} label="Show a sketch">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <PictureField name="picture" label="The sketch" />
        <Field name="note" label="What to know about it" kind="textarea" rows={2} optional />
        <Field name="scale" label="Scale" hint="Such as one to ten." width="half" optional />
        <AreaFields />
        <Field
          name="shownOn"
          label="Shown on"
          kind="day"
          width="short"
          defaultValue={sheet.telling.today}
        />
        <SubmitButton pendingText="Bringing it in…">Put it on the sheet</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
