import { Working } from '@/app/ui/page/working';
import { formatCents } from '@/lib/money/rules';
import { firingCostCents } from '@/lib/studio/rules/kilns/energy';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';

type ForecastProps = Readonly<{ kiln: KilnFacts; wattHours: number }>;

/** What a schedule will take and cost, with how that was worked out. */
export function ForecastWorking({ kiln, wattHours }: ForecastProps) {
  const { centsPerKwh, wearCents, powerW } = kiln;
  const cost = firingCostCents({ wattHours, centsPerKwh, wearCents });
  if (!cost.ok) return null;
  const kwh = kwhWords(wattHours);
  return (
    <>
      <p>
        It should take about {kwh} and cost {formatCents(cost.value)}.
      </p>
      <Working
        steps={[
          `The elements are on for 15 in 100 of the time while it warms up, then for 50, or 65 in a firing above 1,100 °C.`,
          `At ${powerW} W that is ${kwh}.`,
          `At ${centsPerKwh} cents a kWh, and ${formatCents(wearCents)} of wear: ${formatCents(cost.value)}.`,
        ]}
        formula="Power × hours × the part of them that the elements are on, × what a kWh costs, and the wear."
        source="Common practice"
        caution="A guess until a meter is read before and after."
      />
    </>
  );
}

/** Watt-hours as they are said: `63.9 kWh`. */
export function kwhWords(wattHours: number): string {
  const tenths = Math.round(wattHours / 100);
  return `${Math.floor(tenths / 10)}.${tenths % 10} kWh`;
}
