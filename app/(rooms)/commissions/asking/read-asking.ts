import 'server-only';
import type { Actor } from '@/lib/access/rules';
import { isAllowed } from '@/lib/access/rules';
import { listBodies } from '@/lib/commissions/reads/enquiry/bodies';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import { budgetBands } from '@/lib/commissions/rules/enquiry/bands';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import type { AskingProps, KnownRequest } from './known';

/** What the questions of a request need besides what is known of it. */
export async function readAsking(
  actor: Actor,
  known: KnownRequest | null,
  lengthUnit: LengthSystem,
): Promise<Pick<AskingProps, 'bodies' | 'bands' | 'bandsFor'>> {
  const bodies = await listBodies(actor);
  if (!isAllowed(actor.roles, 'commissions.see_money')) return { bodies, bands: [], bandsFor: '' };
  const { basis } = await readCommissionTerms();
  const size = sizeOf(known);
  return {
    bodies,
    bands: budgetBands(basis.areaCentsPerM2, size),
    bandsFor: size
      ? `Reckoned for ${formatSize({ ...size, depthUm: null }, lengthUnit)}, by the gallery’s rates for shallow, middle and deep relief.`
      : 'Reckoned for one square metre (about 11 square feet), by the gallery’s rates for shallow, middle and deep relief.',
  };
}

function sizeOf(known: KnownRequest | null) {
  if (!known || known.widthUm === null || known.heightUm === null) return null;
  return { widthUm: known.widthUm, heightUm: known.heightUm };
}
