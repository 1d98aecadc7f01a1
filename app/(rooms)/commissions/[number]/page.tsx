import { Band } from '@/app/ui/figures/band';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns } from '@/app/ui/page/section';
import { ButtonLink } from '@/app/ui/button/button';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { listHistory, listRequestPictures } from '@/lib/commissions/reads/papers';
import { listMoneyLines } from '@/lib/commissions/reads/payments';
import {
  agreementForCollector,
  changeOrdersForCollector,
} from '@/lib/commissions/reads/agreement/agreements';
import { listShownWhole } from '@/lib/commissions/reads/colours/studio';
import { listAnswers, listLinks, listMails } from '@/lib/commissions/reads/page/links';
import { listProposals } from '@/lib/commissions/reads/proposal/proposals';
import { now } from '@/lib/platform/clock';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { sureness } from '@/lib/commissions/rules/course/promise';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { listAppointmentsOf } from '@/lib/installation/reads';
import { listJobsOfCommission } from '@/lib/studio/reads';
import type { JobStanding } from '@/lib/studio/reads/standing';
import { formatDay } from '@/lib/dates/rules';
import { doneSentence } from '../sheet-href';
import { AgreementLines } from './agreement-lines';
import { AppointmentLines } from './appointment-lines';
import { History } from './history';
import { JobLines } from './job-lines';
import { MoneyLines } from './money-lines';
import { NextStep } from './next-step';
import { PageLines } from './page-lines';
import { RequestLines } from './request-lines';
import { readSheet, type SheetParams } from './read-sheet';
import { SheetHead } from './sheet-head';
import { ShownWall } from './shown-wall';
import css from '../commissions.module.css';

type SheetPageProps = Readonly<{
  params: SheetParams;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

export async function generateMetadata({ params }: SheetPageProps) {
  const sheet = await readSheet(await requireActor('commissions.see'), params);
  return { title: `${sheet.title}, commission ${sheet.number}` };
}

/** A commission on one sheet: what was agreed, where it stands, what is next, all its papers. */
export default async function SheetPage({ params, searchParams }: SheetPageProps) {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const { id, telling, gallery, acts } = sheet;
  const [shown, pictures, jobs, days, history, links, answers] = await Promise.all([
    listShownWhole(actor, id),
    listRequestPictures(actor, id),
    listJobsOfCommission(actor, id, telling.today),
    listAppointmentsOf(actor, id, gallery.timeZone),
    listHistory(actor, id, telling),
    listLinks(actor, id, now()),
    listAnswers(actor, id),
  ]);
  const money = telling.seesMoney
    ? await Promise.all([
        listMoneyLines(actor, id),
        listProposals(actor, id),
        agreementForCollector(id),
        changeOrdersForCollector(id),
        listMails(actor, id),
      ])
    : null;
  const done = doneSentence((await searchParams).done);
  return (
    <>
      <PageHead
        title={sheet.title}
        work
        lead={`Commission ${sheet.number}, for ${sheet.collector.name}`}
        back={{ href: '/commissions', name: 'Commissions' }}
      />
      {done ? <Notice kind="done">{done}</Notice> : null}
      <SheetHead sheet={sheet} jobs={jobs} days={days} />
      <div className={css['band']}>
        <Band label="From the agreement to the wall" {...bandOf(sheet, jobs)} />
      </div>
      <NextStep sheet={sheet} shown={shown} days={days} roles={actor.roles} />
      <Standings sheet={sheet} />
      {money ? (
        <>
          <MoneyLines sheet={sheet} lines={money[0]} />
          <AgreementLines
            sheet={sheet}
            proposals={money[1]}
            agreement={money[2]}
            changes={money[3]}
          />
        </>
      ) : null}
      <ShownWall sheet={sheet} shown={shown} />
      <Columns
        wide={
          <JobLines sheet={sheet} jobs={jobs} seesStudio={isAllowed(actor.roles, 'studio.see')} />
        }
        beside={
          <AppointmentLines
            sheet={sheet}
            days={days}
            seesDiary={isAllowed(actor.roles, 'diary.see')}
          />
        }
      />
      <PageLines
        sheet={sheet}
        links={links}
        mails={money?.[4] ?? []}
        answers={answers}
        may={{ open: acts.has('page'), offer: acts.has('days') }}
      />
      <RequestLines sheet={sheet} pictures={pictures} />
      <History lines={history} zone={gallery.timeZone} />
      {acts.has('end') ? <EndIt number={sheet.number} /> : null}
    </>
  );
}

function EndIt({ number }: Readonly<{ number: number }>) {
  return (
    <p className={css['end']}>
      <ButtonLink href={`/commissions/${number}/end`} variant="danger">
        End it early
      </ButtonLink>
    </p>
  );
}

const pegStates = { done: 'filled', next: 'next', open: 'open' } as const;

function bandOf(sheet: Sheet, jobs: readonly JobStanding[]) {
  const { band, telling, agreement, handOver, ending } = sheet;
  const pegs = band.map(({ name, state, on }) => ({
    name,
    state: pegStates[state],
    when: on ? dayWord(on, telling.today) : undefined,
  }));
  const promisedOn = agreement?.promisedOn;
  if (!promisedOn) return { pegs };
  const isOpen = handOver === null && ending === null;
  const sure = isOpen
    ? sureness(
        promisedOn,
        jobs.map((job) => job.ready),
      )
    : null;
  return { pegs, promised: { when: formatDay(promisedOn, 'long'), sure: sure ?? undefined } };
}

function Standings({ sheet }: Readonly<{ sheet: Sheet }>) {
  const { override, ending, telling } = sheet;
  return (
    <>
      {override ? (
        <Notice kind="caution" title="The owner let the making begin before everything was there">
          On {dayWord(override.on, telling.today)}: {override.why}
        </Notice>
      ) : null}
      {ending && (sheet.paidCents ?? 0n) > 0n ? (
        <Notice kind="caution" title="Its deposits are still held">
          What was paid stays a debt to {sheet.collector.name} until the owner decides whether it
          goes back or stays.
        </Notice>
      ) : null}
    </>
  );
}
