import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { bringColours } from '../../actions';
import { PictureField } from '../../picture-field';
import { requireActor } from '@/lib/access/reads';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';

export const metadata = { title: 'Show a colour tile' };

/** A colour tile as it is shown to the collector. */
export default async function ColoursPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'colours');
  return (
    <ActPage
      sheet={sheet}
      title="Show a colour tile"
      lead="It gets the next number. Its twin stays in the studio; colours are judged in the room’s own light, not from the picture."
    >
      <FormFrame action={bringColours} label="Show a colour tile">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <PictureField name="picture" label="The tile" />
        <Field
          name="glazes"
          label="Glazes in their order, coats and cone"
          hint="As on the back of the tile."
          placeholder="Iron slip, celadon, three coats, cone 6"
        />
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
