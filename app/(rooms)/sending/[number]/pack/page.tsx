import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import { tierSteps } from '@/lib/freight/rules/tiers';
import { getGallery } from '@/lib/platform/settings';
import { readToGo, type ToGo } from '@/lib/sending/reads/to-go';
import { piecesTyped } from '@/lib/sending/rules/typed/pieces';
import { proposeAction } from '../../actions';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../../read-shipment';
import css from '../../sending.module.css';

export const metadata: Metadata = { title: 'What goes into it' };

type PackProps = ShipmentAddress & Readonly<{ searchParams: Promise<{ as?: string | string[] }> }>;

/** What is to go, with size and weight; from it boxes and crates are reckoned. */
export default async function PackPage({ params, searchParams }: PackProps) {
  const actor = await requireActor('sending.do');
  const [shipment, gallery] = await Promise.all([readShipmentOf(actor, params), getGallery()]);
  const toGo = await readToGo(actor, shipment);
  const parts = (await searchParams).as === 'parts' ? toGo.parts : null;
  const asParts = parts !== null;
  const pieces = parts ?? toGo.pieces;
  const here = `/sending/${shipment.number}`;
  const unit = gallery.lengthUnit;
  return (
    <>
      <PageHead
        title="What goes into it"
        back={{ href: here, name: shipmentName(shipment) }}
        lead="One thing on each line. Boxes and crates are reckoned from it, and changed by hand after."
      />
      <WholeOrParts toGo={toGo} here={`${here}/pack`} asParts={asParts} />
      <div className={css['cautions']}>
        {shipment.boxes.length > 0 ? (
          <Caution>the boxes that are there go, with what was changed on them by hand.</Caution>
        ) : null}
        {toGo.isWeighed ? null : (
          <Caution>
            a weight here is reckoned by size; nobody put it on a scale. Weigh it before it goes.
          </Caution>
        )}
      </div>
      <Columns
        wide={
          <FormFrame key={String(asParts)} action={proposeAction} label="What goes into it">
            <RequestKey />
            <input type="hidden" name="shipmentId" value={shipment.id} />
            <Field
              name="pieces"
              label="What is to go"
              kind="textarea"
              rows={Math.min(24, Math.max(6, pieces.length + 2))}
              hint={
                unit === 'in'
                  ? 'What it is; height × width × depth; weight of one. 2 × Tern over shoals; 10 × 10 × 1 in; 6 lb 4 oz'
                  : 'What it is; height × width × depth; weight of one. 2 × Tern over shoals; 254 × 254 × 25 mm; 2.8 kg'
              }
              defaultValue={piecesTyped(pieces, unit, toGo.isWeighed)}
            />
            <SubmitButton size="counter">Reckon boxes and crates</SubmitButton>
          </FormFrame>
        }
        beside={<HowItIsPacked />}
      />
    </>
  );
}

type WholeOrPartsProps = Readonly<{ toGo: ToGo; here: string; asParts: boolean }>;

function WholeOrParts({ toGo, here, asParts }: WholeOrPartsProps) {
  if (toGo.parts === null) return null;
  return (
    <Views
      label="Whole or in parts"
      views={[
        { href: here, name: 'Whole, on its board', current: !asParts },
        {
          ...{ href: `${here}?as=parts`, name: 'In numbered parts', current: asParts },
          count: toGo.parts.length,
        },
      ]}
    />
  );
}

function HowItIsPacked() {
  return (
    <>
      <PackedSo title="Tiles, up to 12 in" steps={tierSteps.sleeves} />
      <PackedSo title="A panel, up to 26 in and 40 lb" steps={tierSteps.panel_box} />
      <PackedSo title="A relief, or many parts" steps={tierSteps.crate} />
    </>
  );
}

function PackedSo({ title, steps }: Readonly<{ title: string; steps: readonly string[] }>) {
  return (
    <Section title={title}>
      <ul className={css['events']}>
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ul>
    </Section>
  );
}
