import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import type { Receipt } from '@/lib/sales/reads/receipts';
import { keepCarrierSlip } from '../actions';

type CarrierSlipProps = Readonly<{ receipt: Receipt; mayKeep: boolean }>;

/** The proof that it was sent: without it, a sale to another state counts as sold here. */
export function CarrierSlip({ receipt, mayKeep }: CarrierSlipProps) {
  const { proof, delivery } = receipt;
  if (delivery !== 'sent') return null;
  return (
    <div className="not-on-paper">
      <Section
        title="The carrier’s slip"
        lead={proof ? null : 'Keep it: a sale to another state without proof counts as sold here.'}
      >
        {proof ? <SlipFacts proof={proof} /> : null}
        {mayKeep ? (
          <details open={proof === null}>
            <summary>{proof ? 'It arrived, or something was wrong' : 'Write it down'}</summary>
            <SlipForm receipt={receipt} />
          </details>
        ) : null}
      </Section>
    </div>
  );
}

function SlipFacts({ proof }: Readonly<{ proof: NonNullable<Receipt['proof']> }>) {
  const { carrier, number, sentOn, arrivedOn, fileId } = proof;
  return (
    <Facts
      facts={[
        { name: 'Carried by', value: carrier },
        { name: 'Its number', value: number === '' ? null : number },
        { name: 'Sent', value: <DayText day={sentOn} /> },
        { name: 'Arrived', value: arrivedOn && <DayText day={arrivedOn} /> },
        {
          name: 'The slip',
          value: fileId && <a href={`/files/${fileId}`}>Look at its picture</a>,
          notKnown: 'no picture',
        },
      ]}
    />
  );
}

function SlipForm({ receipt }: Readonly<{ receipt: Receipt }>) {
  const { proof, soldOn, number } = receipt;
  return (
    <FormFrame action={keepCarrierSlip} label="The carrier’s slip">
      <RequestKey />
      <input type="hidden" name="saleNumber" value={number} />
      <Field
        name="carrier"
        label="Carried by"
        defaultValue={proof?.carrier}
        maxLength={60}
        required
      />
      <Field
        name="number"
        label="Its number"
        defaultValue={proof?.number}
        optional
        maxLength={60}
      />
      <Field
        name="sentOn"
        label="Sent on"
        kind="day"
        defaultValue={proof?.sentOn ?? soldOn}
        width="half"
      />
      <Field
        name="arrivedOn"
        label="Arrived on"
        kind="day"
        defaultValue={proof?.arrivedOn ?? ''}
        width="half"
        optional
      />
      <Field name="picture" label="A picture of the slip" kind="file" accept="image/*" optional />
      <SubmitButton>Keep it</SubmitButton>
    </FormFrame>
  );
}
