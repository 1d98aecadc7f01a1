import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { PageHead } from '@/app/ui/page/page-head';
import { SignatureFields } from '@/app/ui/signature/signature-fields';
import { requireActor } from '@/lib/access/reads';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import { wayAction } from '../../../actions';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../../../read-shipment';
import { isStepShown, steps, type StepShown } from './steps';

export const metadata = { title: 'What became of it' };

/** Says what became of a shipment: packed, left, arrived, fetched, called off, or a note. */
export default async function StepPage({ params }: ShipmentAddress<{ kind: string }>) {
  const actor = await requireActor('sending.do');
  const [shipment, gallery] = await Promise.all([readShipmentOf(actor, params), getGallery()]);
  const { kind } = await params;
  if (!isStepShown(kind)) notFound();
  const { title, button, caution } = steps[kind];
  const today = dayOf(now(), gallery.timeZone);
  return (
    <>
      <PageHead
        title={title}
        back={{ href: `/sending/${shipment.number}`, name: shipmentName(shipment) }}
        lead={`To ${shipment.toName}.`}
      />
      {caution ? <Caution>{caution}</Caution> : null}
      <FormFrame action={wayAction} label={title}>
        <RequestKey />
        <input type="hidden" name="shipmentId" value={shipment.id} />
        <input type="hidden" name="kind" value={kind} />
        <StepFields {...{ kind, shipment, today }} />
        <SubmitButton size="counter" variant={kind === 'called_off' ? 'danger' : 'main'}>
          {button}
        </SubmitButton>
      </FormFrame>
    </>
  );
}

type StepFieldsProps = Readonly<{ kind: StepShown; shipment: ShipmentTold; today: Day }>;

function StepFields({ kind, shipment, today }: StepFieldsProps) {
  const { dayName, wordsName } = steps[kind];
  const isNumbered = (kind === 'sent' && shipment.how === 'carrier') || kind === 'noted';
  return (
    <>
      <Field name="on" label={dayName} kind="day" defaultValue={today} width="half" />
      {isNumbered ? (
        <Field
          name="tracking"
          label="The carrier’s number"
          hint={kind === 'noted' ? 'Only where it is another one now.' : undefined}
          maxLength={80}
          width="half"
          optional
        />
      ) : null}
      {kind === 'arrived' ? (
        <Field name="takenBy" label="Who took it" maxLength={120} width="half" optional />
      ) : null}
      {kind === 'fetched' ? (
        <SignatureFields
          name={shipment.toName}
          onPaper
          under="Whoever takes it, as they sign: the boxes were counted and looked at."
        />
      ) : null}
      <Field
        name="words"
        label={wordsName}
        kind="textarea"
        rows={3}
        maxLength={1000}
        optional={kind !== 'called_off' && kind !== 'noted'}
      />
    </>
  );
}
