import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { conditionMost, conditionWhens } from '@/lib/sending/rules/condition';
import { isOpen } from '@/lib/sending/rules/way';
import { reportAction } from '../../../actions';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../../../read-shipment';

export const metadata: Metadata = { title: 'How it looks' };

/** How a piece looks, in words and pictures; marks are set on the pictures after. */
export default async function NewConditionPage({ params }: ShipmentAddress) {
  const actor = await requireActor('sending.do');
  const [shipment, gallery] = await Promise.all([readShipmentOf(actor, params), getGallery()]);
  const today = dayOf(now(), gallery.timeZone);
  return (
    <>
      <PageHead
        title="How it looks"
        back={{ href: `/sending/${shipment.number}`, name: shipmentName(shipment) }}
        lead="What is written stays. Look again, and write it again, when it changed."
      />
      <FormFrame action={reportAction} label="How it looks">
        <RequestKey />
        <input type="hidden" name="shipmentId" value={shipment.id} />
        <Choice
          name="when"
          legend="When"
          options={conditionWhens.map(({ when, words }) => ({ value: when, label: words }))}
          defaultValue={isOpen(shipment.events) ? 'out' : 'in'}
        />
        <Field name="on" label="Looked at on" kind="day" defaultValue={today} width="half" />
        <Field
          name="words"
          label="In words"
          kind="textarea"
          rows={4}
          hint="Edges, glaze, relief, board; which box it was in. “Nothing to see” is an answer too."
          maxLength={2000}
          required
        />
        <Field
          name="pictures"
          label="Pictures"
          kind="file"
          accept="image/*"
          multiple
          hint={`The whole, each side, each layer, the closed box; at most ${conditionMost.views}.`}
          optional
        />
        <SubmitButton size="counter">Write it down</SubmitButton>
      </FormFrame>
    </>
  );
}
