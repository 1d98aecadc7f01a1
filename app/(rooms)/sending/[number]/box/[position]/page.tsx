import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { paddingUsualUm } from '@/lib/freight/rules/boxing';
import { boxWords } from '@/lib/freight/rules/tiers';
import { getGallery } from '@/lib/platform/settings';
import type { BoxKept } from '@/lib/sending/reads/stored';
import { contentsTyped } from '@/lib/sending/rules/typed/contents';
import { lengthBare, weightBare } from '@/lib/sending/rules/typed/line';
import type { LengthSystem } from '@/lib/units/rules';
import { boxAction, removeAction } from '../../../actions';
import { readShipmentOf, shipmentName, type ShipmentAddress } from '../../../read-shipment';
import css from '../../../sending.module.css';
import { MoveForm } from './move-form';

export const metadata: Metadata = { title: 'A box' };

/** One box: what it is, how large, what is in it; and what goes into another. */
export default async function BoxPage({ params }: ShipmentAddress<{ position: string }>) {
  const actor = await requireActor('sending.do');
  const [shipment, gallery] = await Promise.all([readShipmentOf(actor, params), getGallery()]);
  const { position } = await params;
  const box = shipment.boxes.find((each) => String(each.position) === position) ?? null;
  if (!box && position !== 'new') notFound();
  const title = box ? `Box ${box.position}` : 'Another box';
  return (
    <>
      <PageHead
        title={title}
        back={{ href: `/sending/${shipment.number}`, name: shipmentName(shipment) }}
      />
      <Columns
        wide={<BoxForm {...{ box, title }} shipmentId={shipment.id} unit={gallery.lengthUnit} />}
        beside={
          box ? (
            <>
              <MoveForm {...{ shipment, box }} />
              <Section title="Take it away" lead="With everything that is in it.">
                <FormFrame action={removeAction} label="Take the box away">
                  <RequestKey />
                  <input type="hidden" name="shipmentId" value={shipment.id} />
                  <input type="hidden" name="crateId" value={box.id} />
                  <SubmitButton variant="danger">Take box {box.position} away</SubmitButton>
                </FormFrame>
              </Section>
            </>
          ) : null
        }
      />
    </>
  );
}

type BoxFormProps = Readonly<{
  box: BoxKept | null;
  title: string;
  shipmentId: string;
  unit: LengthSystem;
}>;

function BoxForm({ box, title, shipmentId, unit }: BoxFormProps) {
  return (
    <FormFrame action={boxAction} label={title}>
      <RequestKey />
      <input type="hidden" name="shipmentId" value={shipmentId} />
      <input type="hidden" name="crateId" value={box?.id ?? ''} />
      <Choice
        name="kind"
        legend="What it is"
        options={(['box', 'double_box', 'crate'] as const).map((kind) => ({
          value: kind,
          label: boxWords[kind],
        }))}
        defaultValue={box?.kind ?? 'double_box'}
      />
      <MeasureFields box={box} unit={unit} />
      <Field
        name="contents"
        label="What is in it"
        kind="textarea"
        rows={Math.min(24, Math.max(6, (box?.contents.length ?? 0) + 3))}
        hint="One on each line, from the bottom up; a semicolon, then what one weighs. An empty line begins the next layer. Part 7; 4 lb 2 oz"
        defaultValue={box ? contentsTyped(box.contents, unit) : ''}
      />
      <Field
        name="note"
        label="To note on the packing list"
        defaultValue={box?.note ?? ''}
        maxLength={400}
        optional
      />
      <SubmitButton size="counter">Keep the box</SubmitButton>
    </FormFrame>
  );
}

function MeasureFields({ box, unit }: Pick<BoxFormProps, 'box' | 'unit'>) {
  const length = (um: number | undefined) => (um ? lengthBare(um, unit) : '');
  const sides = [
    { name: 'lengthUm', label: 'Length outside', value: length(box?.lengthUm) },
    { name: 'widthUm', label: 'Width', value: length(box?.widthUm) },
    { name: 'heightUm', label: 'Height', value: length(box?.heightUm) },
    { name: 'paddingUm', label: 'Padding', value: padding(box, unit) },
  ];
  return (
    <div className={css['three']}>
      {sides.map(({ name, label, value }) => (
        <Field key={name} kind="measure" defaultValue={value} {...{ name, label, unit }} />
      ))}
      <Field
        name="scaleG"
        label="On the scale"
        kind="measure"
        unit={unit === 'in' ? 'lb' : 'kg'}
        defaultValue={box?.scaleG ? weightBare(box.scaleG, unit) : ''}
      />
    </div>
  );
}

function padding(box: BoxKept | null, unit: LengthSystem): string {
  const um = box?.paddingUm ?? paddingUsualUm;
  return um === 0 ? '0' : lengthBare(um, unit);
}
