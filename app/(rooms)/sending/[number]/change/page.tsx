import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listTermsOn } from '@/lib/sending/reads/carriers';
import { changeAction } from '../../actions';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../../read-shipment';
import { WhereFields } from '../../where-fields';

export const metadata: Metadata = { title: 'How and where to' };

/** Changes how and where to a shipment goes, while it is here. */
export default async function ChangeShipmentPage({ params }: ShipmentAddress) {
  const actor = await requireActor('sending.do');
  const [shipment, gallery] = await Promise.all([readShipmentOf(actor, params), getGallery()]);
  const holding = await listTermsOn(actor, dayOf(now(), gallery.timeZone));
  const { terms } = shipment;
  const chosen = terms && holding.every(({ id }) => id !== terms.id) ? [terms] : [];
  return (
    <>
      <PageHead
        title="How and where to"
        back={{ href: `/sending/${shipment.number}`, name: shipmentName(shipment) }}
      />
      <FormFrame action={changeAction} label="How and where to">
        <RequestKey />
        <input type="hidden" name="shipmentId" value={shipment.id} />
        <WhereFields
          terms={[...chosen, ...holding]}
          known={{ ...shipment, termsId: terms?.id ?? null }}
        />
        <SubmitButton size="counter">Keep it</SubmitButton>
      </FormFrame>
    </>
  );
}
