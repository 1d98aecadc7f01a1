import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { boxWords } from '@/lib/freight/rules/tiers';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { BoxKept } from '@/lib/sending/reads/stored';
import { namedTyped } from '@/lib/sending/rules/typed/line';
import { moveAction } from '../../../actions';

type MoveFormProps = Readonly<{ shipment: ShipmentTold; box: BoxKept }>;

/** Puts some of what is in a box into another one, or into a new one. */
export function MoveForm({ shipment, box }: MoveFormProps) {
  if (box.contents.length < 2) return null;
  const others = shipment.boxes.filter(({ id }) => id !== box.id);
  return (
    <Section title="Into another box" lead="It lies on top there. Both go on the scale again.">
      <FormFrame action={moveAction} label="Into another box">
        <RequestKey />
        <input type="hidden" name="shipmentId" value={shipment.id} />
        <input type="hidden" name="fromId" value={box.id} />
        <Choice
          name="contentIds"
          kind="tick"
          legend="What goes over"
          options={box.contents.map((content) => ({
            value: content.id,
            label: namedTyped(content),
          }))}
        />
        <Field
          name="toId"
          label="Into"
          kind="select"
          options={[
            ...others.map(({ id, position, kind }) => ({
              value: id,
              label: `box ${position}, ${boxWords[kind]}`,
            })),
            { value: 'new', label: 'a new box like this one' },
          ]}
        />
        <SubmitButton variant="quiet">Put it over</SubmitButton>
      </FormFrame>
    </Section>
  );
}
