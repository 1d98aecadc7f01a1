import { clayWeightG } from '@/lib/clay/rules';
import { buildUpPrice, type BuildUp, type WorkKind } from './build-up';
import { linesOf, type CommissionLineKind, type LinesDecided } from './lines';
import { areaRate, type PriceBasis } from './terms';
import type { Cents } from '@/lib/money/rules';

/** What a person says of the piece and its price. */
export type PriceSaid = Readonly<Record<WorkKind, string>> & {
  readonly widthUm: number;
  readonly heightUm: number;
  readonly depthUm: number;
  readonly pieces: number;
  readonly coats: number;
  readonly firings: number;
  readonly framed: 'yes' | 'no';
  readonly otherCents: Cents;
  readonly crateCents: Cents;
  readonly freightCents: Cents;
  readonly travelCents: Cents;
  readonly installationCents: Cents;
  readonly askedCents: Cents | null;
  readonly apart: readonly CommissionLineKind[];
  readonly designFeePercent: string;
  readonly designFeeCredited: 'yes' | 'no';
};

/** A price worked out: the build-up, the lines that go out, and the weight. */
export type PriceWorkedOut = LinesDecided & { readonly built: BuildUp; readonly weightG: number };

const densityGPerCm3 = '2.2';

/**
 * Works a price out from what is said of the piece and the gallery's own rates.
 *
 * @returns null when the piece is too large for clay to be reckoned, or the price asked for does not
 *   cover the lines that stand apart
 */
export function workOutPrice(said: PriceSaid, basis: PriceBasis): PriceWorkedOut | null {
  const { widthUm, heightUm, depthUm } = said;
  const weight = clayWeightG({ lengthUm: heightUm, widthUm, thicknessUm: depthUm, densityGPerCm3 });
  if (!weight.ok) return null;
  const { crateCents, freightCents, travelCents, installationCents } = said;
  const built = buildUpPrice({
    ...{ widthUm, heightUm, depthUm, weightG: weight.value },
    ...{ pieces: said.pieces, coats: said.coats, firings: said.firings },
    hours: said,
    hourCents: basis.hourCents,
    clayCentsPerKg: basis.clayCentsPerKg,
    glazeCentsPerM2: basis.glazeCentsPerM2,
    firingCents: basis.firingCents,
    boardCentsPerM2: basis.boardCentsPerM2,
    frameCentsPerM: said.framed === 'yes' ? basis.frameCentsPerM : 0n,
    otherCents: said.otherCents,
    lossPercent: basis.lossPercent,
    overheadPercent: basis.overheadPercent,
    contingencyPercent: basis.contingencyPercent,
    marginPercent: basis.marginPercent,
    areaCentsPerM2: areaRate(basis, depthUm),
    ...{ crateCents, freightCents, travelCents, installationCents },
  });
  const decided = linesOf(
    built,
    {
      crate: crateCents,
      freight: freightCents,
      travel: travelCents,
      installation: installationCents,
    },
    {
      apart: said.apart,
      priceCents: said.askedCents,
      designFeePercent: said.designFeePercent,
      designFeeCredited: said.designFeeCredited === 'yes',
    },
  );
  const work = decided.lines[0];
  if (!work || work.amountCents <= 0n) return null;
  return { ...decided, built, weightG: weight.value };
}
