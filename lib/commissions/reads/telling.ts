import 'server-only';
import { allow, type Actor } from '@/lib/access/rules';
import type { Telling } from '@/lib/commissions/rules/course/sentences';
import { dayOf } from '@/lib/dates/rules';
import { currencyNamed } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery, type Gallery } from '@/lib/platform/settings';

/** How things are told to somebody today, in this gallery. */
export async function readTelling(
  actor: Actor,
): Promise<{ telling: Telling; zone: string; gallery: Gallery }> {
  const gallery = await getGallery();
  const telling = {
    today: dayOf(now(), gallery.timeZone),
    seesMoney: allow(actor, 'commissions.see_money').ok,
    currency: currencyNamed(gallery.currency),
  };
  return { telling, zone: gallery.timeZone, gallery };
}
