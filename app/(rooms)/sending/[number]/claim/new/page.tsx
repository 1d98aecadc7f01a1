import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { leftWords, limitsOf } from '@/lib/sending/rules/limits';
import { claimAction } from '../../../actions';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../../../read-shipment';

export const metadata: Metadata = { title: 'Something is broken' };

/** Damage on the way: when it was found, what it is, what is asked for it, pictures. */
export default async function NewClaimPage({ params }: ShipmentAddress) {
  const actor = await requireActor('sending.do');
  const [shipment, gallery] = await Promise.all([readShipmentOf(actor, params), getGallery()]);
  const today = dayOf(now(), gallery.timeZone);
  const { events, terms, insuredCents } = shipment;
  const { reportBy, claimBy } = limitsOf(events, terms, { foundOn: today, today });
  return (
    <>
      <PageHead
        title="Something is broken"
        back={{ href: `/sending/${shipment.number}`, name: shipmentName(shipment) }}
        lead={
          `To be told by ${formatDay(reportBy.byOn, 'long')} (${leftWords(reportBy)}), ` +
          `claimed by ${formatDay(claimBy.byOn, 'long')}.`
        }
      />
      <Caution>
        nothing is thrown away: box, padding and every fragment stay until it is settled. Shards
        cut; gloves on.
      </Caution>
      <FormFrame action={claimAction} label="Something is broken">
        <RequestKey />
        <input type="hidden" name="shipmentId" value={shipment.id} />
        <Field name="foundOn" label="Found on" kind="day" defaultValue={today} width="half" />
        <Field
          name="words"
          label="What is broken"
          kind="textarea"
          rows={4}
          hint="Which part, in which box; how the box looked outside."
          maxLength={2000}
          required
        />
        <Field
          name="asked"
          label="What is asked for it"
          kind="money"
          width="half"
          hint="What it costs to mend or to make again, at most what it is worth."
          defaultValue={insuredCents > 0n ? plainCents(insuredCents) : ''}
          required
        />
        <Field
          name="pictures"
          label="Pictures"
          kind="file"
          accept="image/*"
          multiple
          hint="The box from outside, the padding, each layer, the damage; at most 12."
          optional
        />
        <SubmitButton size="counter">Write it down</SubmitButton>
      </FormFrame>
    </>
  );
}
