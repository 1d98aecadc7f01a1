import 'server-only';
import { db } from '@/lib/platform/db/client';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { roundsOf, type Rounds } from '@/lib/commissions/rules/colours/rounds';
import { getGallery } from '@/lib/platform/settings';
import { readRoundTerms } from './round-terms';
import { readShown, type ShownWhole } from './shown';

/** What was shown, for the collector's own page: whoever opened the link of this commission may see it. */
export async function shownForCollector(commissionId: string): Promise<ShownWhole[]> {
  return readShown(db(), commissionId);
}

/** The round that asking for changes to a sketch would be, and what it costs. */
export async function roundFor(commissionId: string, label: string): Promise<Rounds> {
  const { timeZone } = await getGallery();
  const row = await db().commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: factsSelect,
  });
  const terms = await readRoundTerms(db(), commissionId);
  return roundsOf(factsOf(row, timeZone), label, terms);
}
