import type { Metadata } from 'next';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { daysBetween } from '@/lib/dates/rules';
import { listPastJobs, listPastPromises } from '@/lib/studio/reads/forecast/past';
import {
  lateDaysOf,
  middleWords,
  pastPromises,
  pastSentence,
  pastShares,
  promisesSentence,
  type PastJob,
  type PastPromise,
} from '@/lib/studio/rules/forecast/telling/past';
import { ViewsOfDays } from '../parts/views-of-days';
import { PastDrawn, PastTable, PromisesTable } from './past-drawn';
import css from '../days.module.css';

export const metadata: Metadata = { title: 'How days turned out' };

/** Whether what was foretold came true, and whether what was promised was kept. */
export default async function PastPage() {
  const actor = await requireActor('studio.see');
  const [jobs, promises] = await Promise.all([listPastJobs(actor), listPastPromises(actor)]);
  return (
    <>
      <PageHead
        title="How days turned out"
        lead="What was foretold when a job was opened, against the day it was finished; what was promised, against the hand-over."
      />
      <InThisRoom room="studio" here="days" roles={actor.roles} />
      <ViewsOfDays here="past" />
      <Section title="What was foretold">
        <Foretold jobs={jobs} />
      </Section>
      <Section title="What was promised">
        <Promised promises={promises} />
      </Section>
    </>
  );
}

function Foretold({ jobs }: Readonly<{ jobs: readonly PastJob[] }>) {
  const shares = pastShares(jobs);
  if (jobs.length === 0) {
    return (
      <Empty title="Nothing to compare yet">
        A day is foretold when a job is opened. When it is finished, it stands here beside the day
        it truly was.
      </Empty>
    );
  }
  return (
    <div className={css['answer']}>
      <p className={css['big']}>{pastSentence(shares)}</p>
      <p>
        By the day in 50 of 100 it was {shares.by50}, by the day in 95 of 100 it was {shares.by95}.{' '}
        {middleWords(shares.medianLateDays, 'the day in 80 of 100')}
      </p>
      <PastDrawn
        post="the 80-day"
        marks={jobs.map((job) => ({ key: job.number, late: lateDaysOf(job) }))}
      />
      <p className={css['quiet']}>
        Each dot is one job, the newest at the foot: left of the post it was sooner, right of it
        later, in days.
      </p>
      <PastTable jobs={jobs} />
    </div>
  );
}

function Promised({ promises }: Readonly<{ promises: readonly PastPromise[] }>) {
  if (promises.length === 0) {
    return (
      <Empty title="No promise has ended yet">
        When a commission with a promised day is handed over, it is told here whether the day was
        kept.
      </Empty>
    );
  }
  const told = pastPromises(promises);
  return (
    <div className={css['answer']}>
      <p className={css['big']}>{promisesSentence(told)}</p>
      <p>{middleWords(told.medianLateDays, 'the promised day')}</p>
      <PastDrawn
        post="promised"
        marks={promises.map((one) => ({
          key: one.commissionNumber,
          late: daysBetween(one.promisedOn, one.handedOn),
        }))}
      />
      <PromisesTable promises={promises} />
    </div>
  );
}
