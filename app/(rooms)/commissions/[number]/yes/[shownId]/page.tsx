import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { Columns } from '@/app/ui/page/section';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import { SpotPicture } from '@/app/ui/spots/spot-picture';
import { requireActor } from '@/lib/access/reads';
import type { ShownWhole } from '@/lib/commissions/reads/colours/shown';
import { listShownWhole } from '@/lib/commissions/reads/colours/studio';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { seenInHandStatement } from '@/lib/commissions/rules/colours/words';
import { approvalWays, approvalWayWords } from '@/lib/commissions/rules/words';
import { sayYes } from '../../../actions';
import { ActPage, AboutCommission } from '../../act-page';
import { readSheetFor } from '../../read-sheet';
import { signTheirYes } from '../../changes/actions';

export const metadata = { title: 'A yes' };

type YesPageProps = Readonly<{ params: Promise<{ number: string; shownId: string }> }>;

/** A yes to exactly what is looked at: signed here, or written down from a card or a letter. */
export default async function YesPage({ params }: YesPageProps) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'yes');
  const { shownId } = await params;
  const shown = (await listShownWhole(actor, sheet.id)).find((each) => each.id === shownId);
  if (!shown) notFound();
  const name = shown.what === 'sketch' ? `sketch ${shown.label}` : `colour tile ${shown.label}`;
  const spots = (shown.sketch?.areas ?? []).map(({ name: words, ...spot }) => ({ ...spot, words }));
  return (
    <ActPage
      sheet={sheet}
      title={`The yes to ${name}`}
      lead="It counts for exactly this picture with its words, and is never changed."
    >
      <Columns
        wide={<SpotPicture picture={shown.picture} spots={spots} label="Colour areas" />}
        beside={
          shown.yes ? (
            <Notice kind="done">{`${shown.yes.approvedBy} already said yes to it.`}</Notice>
          ) : (
            <>
              <NoteForm sheet={sheet} shown={shown} name={name} />
              <details>
                <summary>They are here and sign on this screen</summary>
                <SignForm sheet={sheet} shown={shown} name={name} />
              </details>
            </>
          )
        }
      />
    </ActPage>
  );
}

type YesFormProps = Readonly<{ sheet: Sheet; shown: ShownWhole; name: string }>;

function About({ sheet, shown }: Omit<YesFormProps, 'name'>) {
  return (
    <>
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <input type="hidden" name="what" value={shown.what} />
      <input type="hidden" name="shownId" value={shown.id} />
      <input type="hidden" name="contentSha256" value={shown.contentSha256} />
    </>
  );
}

function NoteForm({ sheet, shown, name }: YesFormProps) {
  return (
    <FormFrame action={sayYes} label={`The yes to ${name}`}>
      <About sheet={sheet} shown={shown} />
      <Field name="approvedBy" label="Who said yes" defaultValue={sheet.collector.name} />
      <Choice
        name="how"
        legend="How"
        options={approvalWays.map((value) => ({ value, label: approvalWayWords[value] }))}
        defaultValue="in_person"
      />
      {shown.tile ? <LightField /> : null}
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

function SignForm({ sheet, shown, name }: YesFormProps) {
  return (
    <FormFrame action={signTheirYes} label={`Sign the yes to ${name}`}>
      <About sheet={sheet} shown={shown} />
      {shown.tile ? (
        <>
          <LightField />
          <Choice
            name="seenInHand"
            kind="tick"
            legend="In the hand"
            options={[{ value: 'yes', label: seenInHandStatement }]}
          />
        </>
      ) : null}
      <SignatureFields name={sheet.collector.name} under="The collector, as they sign." />
      <SubmitButton variant="quiet">{`Sign the yes to ${name}`}</SubmitButton>
    </FormFrame>
  );
}

function LightField() {
  return (
    <Field
      name="light"
      label="In what light"
      hint="By day, in the room, in the evening."
      width="half"
      optional
    />
  );
}
