import { hemlockCones, salmonberry } from './motifs/cane-and-cone';
import { heronAtLowWater, ternOverShoals } from './motifs/birds';
import { cedarBough, chanterelles, fogAndFirs, swordFern } from './motifs/forest';
import { ottersWake } from './motifs/otter';
import { barnacleField, bullKelp, rainOnTheInlet, riverStones } from './motifs/shore';

import { tidePoolStar } from './motifs/tide-pool';
import type { Motif } from './pen';

/** The motifs of the studio: of our own coast, drawn by us. */
export const motifs: readonly Motif[] = [
  ternOverShoals,
  swordFern,
  heronAtLowWater,
  bullKelp,
  cedarBough,
  riverStones,
  rainOnTheInlet,
  chanterelles,
  salmonberry,
  ottersWake,
  hemlockCones,
  barnacleField,
  fogAndFirs,
  tidePoolStar,
];

/**
 * The motif of that key.
 *
 * @throws Error when there is none: the seed names only motifs of this list
 */
export function motifOf(key: string): Motif {
  const found = motifs.find((motif) => motif.key === key);
  if (!found) throw new Error(`There is no motif ${key}.`);
  return found;
}
