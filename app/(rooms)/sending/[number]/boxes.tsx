import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { Section } from '@/app/ui/page/section';
import { handsCautions } from '@/lib/freight/rules/hands';
import { boxWords } from '@/lib/freight/rules/tiers';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { BoxKept } from '@/lib/sending/reads/stored';
import type { BoxReckoning, ShipmentReckoning } from '@/lib/sending/rules/reckoning';
import { sidesTyped, weightBare } from '@/lib/sending/rules/typed/line';
import { formatWeight, type LengthSystem } from '@/lib/units/rules';
import { weighAction } from '../actions';
import css from '../sending.module.css';
import { Layers } from './layers';

type BoxesProps = Readonly<{
  shipment: ShipmentTold;
  open: boolean;
  reckoning: ShipmentReckoning;
  unit: LengthSystem;
}>;

/** The boxes and crates of a shipment, each with what is in it from the bottom up. */
export function Boxes({ shipment, open, reckoning, unit }: BoxesProps) {
  const { number, boxes } = shipment;
  const here = `/sending/${number}`;
  if (boxes.length === 0) {
    return (
      <Empty
        title="No box yet"
        act={<ButtonLink href={`${here}/pack`}>What goes into it</ButtonLink>}
      >
        Write what is to go with its size and weight, and boxes and crates are reckoned for it.
      </Empty>
    );
  }
  return (
    <Section
      title={boxes.length === 1 ? 'One box' : `${boxes.length} boxes`}
      act={
        open ? (
          <span className={css['acts']}>
            <ButtonLink href={`${here}/box/new`} variant="quiet">
              Add a box
            </ButtonLink>
            <ButtonLink href={`${here}/pack`} variant="quiet">
              Reckon them anew
            </ButtonLink>
          </span>
        ) : null
      }
    >
      <ol className={css['boxes']}>
        {boxes.map((box, at) => (
          <li key={box.id}>
            <Box {...{ box, open, unit, here }} reckoned={reckoning.boxes[at]} />
          </li>
        ))}
      </ol>
      {open ? <Scale shipment={shipment} unit={unit} /> : null}
    </Section>
  );
}

type BoxProps = Readonly<{
  box: BoxKept;
  open: boolean;
  unit: LengthSystem;
  here: string;
  reckoned: BoxReckoning | undefined;
}>;

function Box({ box, open, unit, here, reckoned }: BoxProps) {
  const size = sidesTyped([box.lengthUm, box.widthUm, box.heightUm], unit);
  const pounds = unit === 'in' ? 'lb' : 'kg';
  const weight = box.scaleG ?? box.reckonedG;
  const hands = reckoned ? handsCautions[reckoned.hands] : null;
  return (
    <article className={css['box']} aria-label={`Box ${box.position}`}>
      <h3>
        {box.position}. {boxWords[box.kind]}
      </h3>
      <p>
        {size}
        <span className={css['quiet']}>
          {formatWeight(weight, pounds)}{' '}
          {box.scaleG === null ? 'about, as reckoned' : 'on the scale'}
          {reckoned?.billable ? `, charged as ${reckoned.billable.billableLb} lb` : ''}
        </span>
      </p>
      <Layers contents={box.contents} unit={unit} />
      {box.note === '' ? null : <p className={css['said']}>{box.note}</p>}
      {hands ? <p className={css['quiet']}>{hands}</p> : null}
      {open ? (
        <p>
          <ButtonLink href={`${here}/box/${box.position}`} variant="quiet">
            Change box {box.position}
          </ButtonLink>
        </p>
      ) : null}
    </article>
  );
}

function Scale({ shipment, unit }: Readonly<{ shipment: ShipmentTold; unit: LengthSystem }>) {
  return (
    <details open>
      <summary>What the scale says</summary>
      <FormFrame action={weighAction} label="What the scale says">
        <RequestKey />
        <input type="hidden" name="shipmentId" value={shipment.id} />
        <div className={css['three']}>
          {shipment.boxes.map(({ id, position, scaleG }) => (
            <Field
              key={id}
              name={`scale.${position}`}
              label={`Box ${position}`}
              kind="measure"
              unit={unit === 'in' ? 'lb' : 'kg'}
              defaultValue={scaleG === null ? '' : weightBare(scaleG, unit)}
            />
          ))}
        </div>
        <SubmitButton variant="quiet">Keep the weights</SubmitButton>
      </FormFrame>
    </details>
  );
}
