import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { requireActor } from '@/lib/access/reads';
import { planEvents } from '@/lib/commissions/rules/facts';
import { lineKinds, lineWords } from '@/lib/commissions/rules/proposal/lines';
import { eventWords } from '@/lib/commissions/rules/proposal/plan';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';
import { offer } from './actions';

export const metadata = { title: 'A change order' };

/** What changes of an agreement: its words, its price, its day. It counts once it is signed. */
export default async function ChangePage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.agree');
  const sheet = await readSheetFor(actor, params, 'change');
  return (
    <ActPage
      sheet={sheet}
      title="A change order"
      lead="Written before anything is done. It counts once it is signed; until then nothing changes."
    >
      <FormFrame action={offer} label="A change order">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <Field name="words" label="What becomes of it" kind="textarea" rows={3} />
        <Field name="why" label="Why" optional />
        <Field
          name="askedBy"
          label="Who asked for it"
          width="half"
          defaultValue={sheet.collector.name}
        />
        <Choice
          name="way"
          legend="It costs"
          options={[
            { value: 'more', label: 'more' },
            { value: 'less', label: 'less' },
            { value: 'same', label: 'the same' },
          ]}
          defaultValue="more"
        />
        <Field
          name="amountCents"
          label="By how much, before tax"
          kind="money"
          width="short"
          defaultValue="0"
        />
        <Field
          name="kind"
          label="For"
          kind="select"
          options={lineKinds.map((value) => ({ value, label: lineWords[value] }))}
          defaultValue="work"
        />
        <Field
          name="dueEvent"
          label="Due"
          kind="select"
          options={[
            { value: '', label: 'with the last step of the plan' },
            ...planEvents.map((value) => ({ value, label: eventWords[value] })),
          ]}
          defaultValue=""
        />
        <Field
          name="promisedAfter"
          label="Promised for, from now on"
          hint="Leave it empty when the day stays."
          kind="day"
          width="short"
          optional
        />
        <SubmitButton>Write the change order</SubmitButton>
      </FormFrame>
    </ActPage>
  );
}
