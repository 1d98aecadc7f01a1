import Link from 'next/link';
import { ReadyBy } from '@/app/(rooms)/studio/days/parts/ready-by';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import { isAllowed, type Actor } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import type { JobStanding } from '@/lib/studio/reads/standing';
import { techniqueWords } from '@/lib/studio/rules/routes';
import { beforeClayWords, piecesWords } from '@/lib/studio/rules/words';
import css from '../commissions.module.css';

type JobLinesProps = Readonly<{
  sheet: Sheet;
  jobs: readonly JobStanding[];
  actor: Actor;
}>;

/** The job of a commission: where its parts stand and when they should be ready. */
export function JobLines({ sheet, jobs, actor }: JobLinesProps) {
  const { number, acts, mayBegin, ending } = sheet;
  const waits = mayBegin.missing.length > 0 && !mayBegin.byOverride && !ending;
  return (
    <Section
      title="In the studio"
      id="job"
      act={
        <span className={css['acts']}>
          {acts.has('job') ? (
            <ButtonLink href={`/commissions/${number}/job`} variant="quiet">
              Open the job
            </ButtonLink>
          ) : null}
          {acts.has('begin') ? (
            <ButtonLink href={`/commissions/${number}/begin`} variant="quiet">
              Let the making begin all the same
            </ButtonLink>
          ) : null}
        </span>
      }
    >
      {waits ? <p>The clay waits for {beforeClayWords(mayBegin.missing, null)}.</p> : null}
      {jobs.length === 0 ? (
        <p className={css['quiet']}>No job is open for it yet.</p>
      ) : (
        jobs.map((job) => <OneJob key={job.number} job={job} sheet={sheet} actor={actor} />)
      )}
    </Section>
  );
}

type OneJobProps = Readonly<{ job: JobStanding; sheet: Sheet; actor: Actor }>;

function OneJob({ job, sheet, actor }: OneJobProps) {
  const { today } = sheet.telling;
  const link = isAllowed(actor.roles, 'studio.see');
  const noticeHref = sheet.acts.has('delay') ? `/commissions/${sheet.number}/delay` : undefined;
  const name = `Job ${job.number}`;
  return (
    <div className={css['job']}>
      <h3>{link ? <Link href={`/studio/${job.number}`}>{name}</Link> : name}</h3>
      <Facts
        facts={[
          { name: 'How', value: `${techniqueWords[job.technique]}, ${piecesWords(job.pieces)}` },
          {
            name: 'Stands',
            value: job.standings
              .map((each) => {
                const since = each.sinceOn ? ` since ${dayWord(each.sinceOn, today)}` : '';
                return `${piecesWords(each.pieces)}: ${each.name}${since}`;
              })
              .join('; '),
          },
          {
            name: 'Without any waiting',
            value: job.ready
              ? `about ${dayWord(job.ready.likelyOn, today)}, between ${dayWord(job.ready.shortestOn, today)} and ${dayWord(job.ready.longestOn, today)}`
              : 'finished',
          },
          {
            name: 'Needed',
            value: job.neededOn && <DayText day={job.neededOn} />,
            notKnown: 'no day given',
          },
        ]}
      />
      {sheet.ending ? null : <ReadyBy {...{ actor, jobId: job.id, todayOn: today, noticeHref }} />}
    </div>
  );
}
