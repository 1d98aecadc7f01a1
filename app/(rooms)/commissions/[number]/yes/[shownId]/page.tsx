import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { Columns } from '@/app/ui/page/section';
import { Picture } from '@/app/ui/piece/picture';
import { requireActor } from '@/lib/access/reads';
import { listShown, type ShownTold } from '@/lib/commissions/reads/papers';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { approvalWays, approvalWayWords } from '@/lib/commissions/rules/words';
import { sayYes } from '../../../actions';
import { ActPage, AboutCommission } from '../../act-page';
import { readSheetFor } from '../../read-sheet';

export const metadata = { title: 'Write down a yes' };

type YesPageProps = Readonly<{ params: Promise<{ number: string; shownId: string }> }>;

/** A yes to exactly the picture that is looked at. */
export default async function YesPage({ params }: YesPageProps) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'yes');
  const { shownId } = await params;
  const shown = (await listShown(actor, sheet.id)).find((each) => each.id === shownId);
  if (!shown) notFound();
  const name = shown.what === 'sketch' ? `sketch ${shown.label}` : `colour tile ${shown.label}`;
  return (
    <ActPage
      sheet={sheet}
      title={`The yes to ${name}`}
      lead="It counts for exactly this picture, and is never changed."
    >
      <Columns
        wide={<Picture {...shown.picture} first />}
        beside={<YesForm sheet={sheet} shown={shown} name={name} />}
      />
    </ActPage>
  );
}

type YesFormProps = Readonly<{ sheet: Sheet; shown: ShownTold; name: string }>;

function YesForm({ sheet, shown, name }: YesFormProps) {
  if (shown.yes) {
    return <Notice kind="done">{`${shown.yes.approvedBy} already said yes to it.`}</Notice>;
  }
  return (
    <FormFrame action={sayYes} label={`The yes to ${name}`}>
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <input type="hidden" name="what" value={shown.what} />
      <input type="hidden" name="shownId" value={shown.id} />
      <input type="hidden" name="fileSha256" value={shown.fileSha256} />
      <Field name="approvedBy" label="Who said yes" defaultValue={sheet.collector.name} />
      <Choice
        name="how"
        legend="How"
        options={approvalWays.map((value) => ({ value, label: approvalWayWords[value] }))}
        defaultValue="in_person"
      />
      <Field
        name="approvedOn"
        label="On"
        kind="day"
        width="short"
        defaultValue={sheet.telling.today}
      />
      <SubmitButton>{`Write down the yes to ${name}`}</SubmitButton>
    </FormFrame>
  );
}
