import { z } from 'zod';
import { formatCents } from '@/lib/money/rules';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { coneNamed, coneRates, coneTemperatureC } from '@/lib/studio/rules/kilns/cones';
import { fahrenheitOf } from '@/lib/studio/rules/kilns/degrees';
import { firingCostCents, firingWh } from '@/lib/studio/rules/kilns/energy';
import { decimalText, keys, listOf } from '@/lib/workings/atoms';
import { workedValue, type Working } from '@/lib/workings/working';

const coneMust = 'must be a cone in quotes, from "022" to "01" or from "1" to "14"';
const rateMust =
  'must be 15, 60 or 150 °C an hour over the last 100 °C; cones 022 to 020 have no 15';

const coneInput = keys({
  cone: z.string(coneMust).refine((cone) => coneNamed(cone) !== undefined, coneMust),
  rateCPerHour: z
    .number(rateMust)
    .refine((rate) => coneRates.some((known) => known === rate), rateMust),
}).refine(
  ({ cone, rateCPerHour }) =>
    coneNamed(cone) === undefined || coneTemperatureC(cone, rateCPerHour).ok,
  { path: ['rateCPerHour'], message: rateMust },
);

/** At about what temperature a cone is down. */
export const coneTemperature: Working<
  z.infer<typeof coneInput>,
  { celsius: number; fahrenheit: number }
> = {
  name: 'cone-temperature',
  title: 'How hot a cone is',
  formula:
    'Read from the table of large regular cones that stand by themselves, in the column of the climb.',
  source:
    'Orton Ceramic Foundation, temperature equivalents of self-supporting cones, 022 to 14; ' +
    'read in copies of the chart',
  caution:
    'A cone measures heat and time together: the cone in the kiln goes before any thermometer, and ' +
    'the chart that came with its box before this one.',
  example: { cone: '06', rateCPerHour: 60 },
  input: coneInput,
  workOut: ({ cone, rateCPerHour }) => {
    const celsius = workedValue(coneTemperatureC(cone, rateCPerHour));
    const fahrenheit = fahrenheitOf(celsius);
    return {
      output: { celsius, fahrenheit },
      working: [
        `Cone ${coneNamed(cone) ?? cone} at ${rateCPerHour} °C an hour is down at about ${celsius} °C.`,
        `${celsius} × 9 ÷ 5 + 32 is ${fahrenheit} °F.`,
      ],
    };
  },
};

const powerMust = 'must be the power of the kiln in whole watts, from 1 to 500000';
const minutesMust = 'must be whole minutes, from 1 to 43200';
const aboveNothing = (text: string) => (parseDecimal(text)?.units ?? 0n) > 0n;

const costInput = keys({
  powerW: z.int(powerMust).min(1, powerMust).max(500_000, powerMust),
  stages: listOf(
    keys({
      minutes: z.int(minutesMust).min(1, minutesMust).max(43_200, minutesMust),
      dutyPercent: decimalText(100).refine(aboveNothing, 'must be more than "0"'),
    }),
    'stretches such as {"minutes":420,"dutyPercent":"15"}',
  ),
  centsPerKwh: decimalText(1_000),
});

/** What a firing takes from the line, and what that costs. */
export const firingCost: Working<
  z.infer<typeof costInput>,
  { wattHours: number; cents: number }
> = {
  name: 'firing-cost',
  title: 'What a firing costs',
  formula: 'Power × hours × the part of them that the elements are on, × what a kWh costs.',
  source: 'Common practice',
  caution:
    'How long the elements are on is a guess until it is metered. Wear, and the price by the hour ' +
    'of some suppliers, are not in it.',
  example: {
    powerW: 11_520,
    stages: [
      { minutes: 420, dutyPercent: '15' },
      { minutes: 540, dutyPercent: '50' },
    ],
    centsPerKwh: '15',
  },
  input: costInput,
  workOut: ({ powerW, stages, centsPerKwh }) => {
    const wattHours = workedValue(firingWh({ powerW, stages }));
    const cents = workedValue(firingCostCents({ wattHours, centsPerKwh, wearCents: 0n }));
    return {
      output: { wattHours, cents: Number(cents) },
      working: [
        ...stages.map(
          ({ minutes, dutyPercent }) =>
            `${minutes} minutes with the elements on for ${dutyPercent}% of them.`,
        ),
        `At ${powerW} W that is ${wattHours / 1_000} kWh.`,
        `${wattHours / 1_000} kWh at ${centsPerKwh} cents is ${formatCents(cents)}.`,
      ],
    };
  },
};
