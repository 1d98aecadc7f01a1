import type { Metadata } from 'next';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listBenches } from '@/lib/studio/reads/route-list';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import { listClosedDays } from '@/lib/studio/reads/closed-days';
import { Benches } from './benches';
import { ClosedDaysList } from './closed-days';
import { WaysForm } from './ways-form';

export const metadata: Metadata = { title: 'Ways of the studio' };

/** How the studio works: its days, its benches, how sure it is to be, and what an hour costs. */
export default async function WaysPage() {
  const actor = await requireActor('studio.keep');
  const { timeZone, lengthUnit } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const [settings, benches, closed] = await Promise.all([
    getStudioSettings(),
    listBenches(actor),
    listClosedDays(actor, todayOn),
  ]);
  return (
    <>
      <PageHead
        title="Ways of the studio"
        lead="What the days, the loads and the costs are reckoned with. A change holds from now on."
      />
      <InThisRoom room="studio" here="ways" roles={actor.roles} />
      <Columns
        wide={<WaysForm settings={settings} unit={lengthUnit} />}
        beside={
          <>
            <ClosedDaysList closed={closed} />
            <Benches benches={benches} />
          </>
        }
      />
    </>
  );
}
