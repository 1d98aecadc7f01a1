import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { ShipmentReckoning } from '@/lib/sending/rules/reckoning';
import { reckoningSteps } from '@/lib/sending/rules/reckoning-steps';
import { weighedIn } from '@/lib/sending/rules/typed/line';
import { formatWeight, type LengthSystem } from '@/lib/units/rules';

type ReckonedProps = Readonly<{
  shipment: ShipmentTold;
  reckoning: ShipmentReckoning;
  unit: LengthSystem;
}>;

/** What a shipment comes to: its weight, what is charged, its freight class, and how that was worked out. */
export function Reckoned({ shipment, reckoning, unit }: ReckonedProps) {
  const { terms, boxes } = shipment;
  if (boxes.length === 0) return null;
  const { weightG, unweighed, billableLb, freight } = reckoning;
  const weight = formatWeight(weightG, weighedIn(unit));
  return (
    <Section title="What it comes to">
      <Facts
        facts={[
          {
            name: 'Weighs together',
            value:
              unweighed === 0
                ? weight
                : `${weight}, ${unweighed} of ${boxes.length} boxes only reckoned`,
          },
          ...(billableLb === null
            ? []
            : [{ name: 'Charged as', value: `${billableLb} lb together` }]),
          ...(freight === null
            ? []
            : [
                { name: 'Density', value: `${freight.densityLbPerFt3} lb in a cubic foot` },
                { name: 'Freight class by density', value: String(freight.class) },
              ]),
        ]}
      />
      {terms ? (
        <Working
          steps={reckoningSteps(shipment.boxes, reckoning)}
          formula={
            terms.isFreight
              ? 'all pounds ÷ all cubic feet, read from the scale of classes that holds today'
              : 'length × width × height in inches ÷ the divisor, up to a pound; or the scale, if more'
          }
          source={terms.source || 'Common practice'}
          caution="Carriers change their terms and charge handling on top. Ask for the price before it goes."
        />
      ) : null}
    </Section>
  );
}
