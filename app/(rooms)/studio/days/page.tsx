import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { getDays, type DaysTold } from '@/lib/studio/reads/forecast/days';
import { pageCourse } from '@/lib/studio/reads/forecast/tell';
import { benchNamesOf, lateInHundred } from '@/lib/studio/rules/forecast/telling/words';
import { JobsDrawn } from './parts/jobs-drawn';
import { JobsTable } from './parts/jobs-table';
import { Missing } from './parts/missing';
import { Queues } from './parts/queues';
import { ViewsOfDays } from './parts/views-of-days';

export const metadata: Metadata = { title: 'Days' };

/** When every open job is ready, how sure that is, and what holds it up. */
export default async function DaysPage() {
  const actor = await requireActor('studio.see');
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const days = await getDays(actor, todayOn);
  const { load, jobs, queues } = days;
  return (
    <>
      <PageHead title="Days" lead={leadOf(days)}>
        <ButtonLink href="/studio/days/new" size="counter">
          Look up a day before you promise it
        </ButtonLink>
      </PageHead>
      <InThisRoom room="studio" here="days" roles={actor.roles} />
      <ViewsOfDays here="now" />
      <Missing load={load} />
      {jobs.length > 0 ? (
        <Section
          title="Ready by"
          lead="Dark up to the day by which it is ready in 80 of 100, pale up to that in 95."
        >
          <JobsDrawn jobs={jobs} benchNames={benchNamesOf(load)} todayOn={todayOn} />
          <JobsTable jobs={jobs} />
        </Section>
      ) : null}
      {load.jobs.length + load.stuck.length === 0 ? (
        <Empty title="No job is open">
          When something is begun on the bench, its day is told here.
        </Empty>
      ) : null}
      <Section title="What waits for the kilns">
        <Queues queues={queues} todayOn={todayOn} />
      </Section>
      <Working
        steps={[
          `all ${jobs.length} open jobs go together through benches and kilns, ${pageCourse.futures.toLocaleString('en-US')} times, each time with other luck`,
          'a step takes its shortest to its longest days, the likely ones most often',
          'what is lost begins anew, as often as your own counts say',
          'the day in 80 of 100 is the first by which it was ready in 80 of 100 of them',
        ]}
        formula="the days are counted over all those futures; the sooner needed goes first at a bench, a kiln waits until it is full enough"
        source="a simulation; the mean of a step is that of D. G. Malcolm and others, Operations Research 7, 1959"
        caution="It is as honest as the days, losses, benches and kilns that are written down."
      />
    </>
  );
}

function leadOf({ jobs }: DaysTold): string {
  const atRisk = jobs.filter(({ told }) => (lateInHundred(told) ?? 0) > 20).length;
  if (atRisk === 0) return 'When each open job is ready, and how sure that is.';
  return atRisk === 1
    ? 'One job is late in more than 20 of 100.'
    : `${atRisk} jobs are late in more than 20 of 100.`;
}
