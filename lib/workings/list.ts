import { checkDigitWorking } from './entries/catalogue';
import { absorptionClass, claySize, clayWeight, slipVolume } from './entries/studio/clay';
import { colourDifferenceWorking, labFromSrgbWorking } from './entries/colour';
import { pertWorking, readyDate } from './entries/studio/days';
import { firingShare, firingTimeWorking, kilnCooling, kilnLoad } from './entries/studio/firings';
import { billableWeightWorking, freightClassWorking } from './entries/freight';
import { coneTemperature, firingCost } from './entries/studio/kilns';
import { lossLearned } from './entries/studio/losses';
import { glazeBatch, leachTest, pieceCost } from './entries/studio/making';
import { instalments, moneySplit } from './entries/money';
import { commissionPrice } from './entries/proposal';
import { reorderPointWorking, startCountWorking, stockValue } from './entries/stock';
import { salesTax } from './entries/tax';
import { wallFixings } from './entries/walls/fixings';
import { hangingHeightWorking, liftingLimitWorking, screwWithdrawal } from './entries/walls/known';
import { tileLayout } from './entries/walls/tiles';
import { named, type NamedWorking } from './working';

/** Every calculation of the tool, in the order the Workings page shows them. */
export const workings: readonly NamedWorking[] = [
  named(moneySplit),
  named(instalments),
  named(salesTax),
  named(checkDigitWorking),
  named(stockValue),
  named(reorderPointWorking),
  named(startCountWorking),
  named(lossLearned),
  named(claySize),
  named(clayWeight),
  named(slipVolume),
  named(absorptionClass),
  named(coneTemperature),
  named(firingCost),
  named(firingTimeWorking),
  named(kilnLoad),
  named(kilnCooling),
  named(firingShare),
  named(pertWorking),
  named(readyDate),
  named(glazeBatch),
  named(leachTest),
  named(pieceCost),
  named(colourDifferenceWorking),
  named(labFromSrgbWorking),
  named(commissionPrice),
  named(liftingLimitWorking),
  named(screwWithdrawal),
  named(hangingHeightWorking),
  named(wallFixings),
  named(billableWeightWorking),
  named(freightClassWorking),
  named(tileLayout),
];

/**
 * The calculation of a name.
 *
 * @returns undefined for a name that is not in the list
 */
export function findWorking(name: string): NamedWorking | undefined {
  return workings.find((working) => working.name === name);
}
