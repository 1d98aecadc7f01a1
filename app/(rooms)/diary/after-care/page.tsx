import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { addDays, dayOf } from '@/lib/dates/rules';
import { listLooksDue } from '@/lib/installation/reads/care/looks';
import { listSnagsOpen } from '@/lib/installation/reads/work/snags';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { LookLines } from './look-lines';
import { SnagLines } from './snag-lines';

export const metadata = { title: 'Looking after' };

/** So many days ahead a look is listed. */
const daysAhead = 45;

/** Everything that is to be put right, and the looks after what was handed over. */
export default async function AfterCarePage() {
  const actor = await requireActor('diary.see');
  const today = dayOf(now(), (await getGallery()).timeZone);
  const [snags, looks] = await Promise.all([
    listSnagsOpen(actor),
    listLooksDue(actor, addDays(today, daysAhead)),
  ]);
  const look = isAllowed(actor.roles, 'installation.do');
  const book = isAllowed(actor.roles, 'diary.book');
  return (
    <>
      <PageHead
        title="Looking after"
        lead="What is still to be put right, and the looks after what was handed over."
        back={{ href: '/diary', name: 'Diary' }}
      />
      <InThisRoom room="diary" here="care" roles={actor.roles} />
      <Section title="To be put right" id="snags">
        {snags.length === 0 ? (
          <Empty title="Nothing is to be put right">
            What is not right when a piece is handed over is written on its work order, with who
            puts it right and by when.
          </Empty>
        ) : (
          <SnagLines snags={snags} today={today} mayMend={look} named />
        )}
      </Section>
      <Section title="Looks that are due, or soon" id="looks">
        {looks.length === 0 ? (
          <Empty title="No look is due soon">
            When a piece is signed for on its work order, its looks are set by themselves: two days,
            thirty days and a year after, before the frost, and at the fixings of heavy work.
          </Empty>
        ) : (
          <LookLines looks={looks} today={today} may={{ look, book }} named />
        )}
      </Section>
    </>
  );
}
