import { z } from 'zod';
import { buildUpPrice } from '@/lib/commissions/rules/proposal/build-up';
import { formatCents } from '@/lib/money/rules';
import { decimalText, keys, lengthMm, wholeCents } from '../atoms';
import type { Working } from '../working';

const countMust = 'must be a whole number from 0 to 5000';
const count = z.int(countMust).min(0, countMust).max(5_000, countMust);
const hours = decimalText(10_000, 2);
const percent = decimalText(100, 3);

const priceInput = keys({
  ...{ widthMm: lengthMm, heightMm: lengthMm, hourCents: wholeCents, firingCents: wholeCents },
  ...{ firings: count, materialsCents: wholeCents, chargesCents: wholeCents },
  hours: keys({
    ...{
      design: hours,
      making: hours,
      glazing: hours,
      kiln: hours,
      assembly: hours,
      office: hours,
    },
  }),
  ...{ lossPercent: percent, overheadPercent: percent },
  ...{ contingencyPercent: percent, marginPercent: percent },
  areaCentsPerM2: wholeCents,
});

/** What a commission comes to, built up from the piece itself. */
export const commissionPrice: Working<
  z.infer<typeof priceInput>,
  Record<'directCents' | 'costCents' | 'workCents' | 'totalCents' | 'areaCents', string>
> = {
  name: 'commission-price',
  title: 'The price of a commission, built up',
  formula:
    'Direct = hours × rate + materials + firings. Losses on making, glazing, kiln, materials and ' +
    'firings; overhead on direct; contingency on the three; margin on the cost. Each rounded half up.',
  source: 'Common practice of relief studios; the rates and percents are each studio’s own',
  caution: 'Before tax. A figure by area alone can lie below the cost: look at both.',
  example: {
    ...{ widthMm: 1524, heightMm: 914.4, hourCents: 4500, firingCents: 3000 },
    ...{ firings: 8, materialsCents: 62000, chargesCents: 0 },
    hours: {
      ...{ design: '14', making: '60', glazing: '26', kiln: '12', assembly: '16', office: '10' },
    },
    ...{ lossPercent: '12', overheadPercent: '20' },
    ...{ contingencyPercent: '8', marginPercent: '15', areaCentsPerM2: 484376 },
  },
  input: priceInput,
  workOut: (input) => {
    const { widthMm: widthUm, heightMm: heightUm, materialsCents, chargesCents, ...rest } = input;
    const built = buildUpPrice({
      ...{ ...rest, widthUm, heightUm, depthUm: 0, pieces: 1, weightG: 0, coats: 0 },
      ...{ clayCentsPerKg: 0n, glazeCentsPerM2: 0n, boardCentsPerM2: 0n, frameCentsPerM: 0n },
      ...{ otherCents: materialsCents, crateCents: 0n, freightCents: 0n, travelCents: 0n },
      installationCents: chargesCents,
    });
    const { directCents, lossCents, overheadCents, contingencyCents, costCents } = built;
    const { marginCents, workCents, totalCents, areaCents } = built;
    const money = (cents: bigint) => formatCents(cents);
    return {
      output: {
        directCents: directCents.toString(),
        costCents: costCents.toString(),
        workCents: workCents.toString(),
        totalCents: totalCents.toString(),
        areaCents: areaCents.toString(),
      },
      working: [
        ...built.direct.map(({ words, cents }) => `${words}: ${money(cents)}.`),
        `Direct ${money(directCents)}; losses ${money(lossCents)}, overhead ` +
          `${money(overheadCents)}, contingency ${money(contingencyCents)}: it costs ${money(costCents)}.`,
        `With a margin of ${money(marginCents)} the work is ${money(workCents)}, ` +
          `with charges ${money(totalCents)}. By area it would be ${money(areaCents)}.`,
      ],
    };
  },
};
