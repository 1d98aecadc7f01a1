import { Band } from '@/app/ui/figures/band';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns } from '@/app/ui/page/section';
import { ButtonLink } from '@/app/ui/button/button';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { sureness, toldDay } from '@/lib/commissions/rules/course/promise';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { readyOfJobs } from '@/lib/studio/reads/forecast/ready';
import type { ReadyDays } from '@/lib/studio/rules/days';
import { formatDay } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { doneSentence } from '../sheet-href';
import { AgreementLines } from './agreement-lines';
import { AppointmentLines } from './appointment-lines';
import { CareLines } from './care-lines';
import { AssemblyLines } from './assembly-lines';
import { History } from './history';
import { JobLines } from './job-lines';
import { MoneyLines } from './money-lines';
import { NextStep } from './next-step';
import { PageLines } from './page-lines';
import { ProgressLines } from './progress-lines';
import { ProposalLines } from './proposal/proposal-lines';
import { readMoneyPapers, readPapers } from './read-papers';
import { RequestLines } from './request-lines';
import { readSheet, type SheetParams } from './read-sheet';
import { SendingLines } from './sending-lines';
import { SheetHead } from './sheet-head';
import { ShownWall } from './shown-wall';
import { TileWallLines } from './tile-wall-lines';
import { TimeLines } from './time-lines';
import { WallLines } from './wall-lines';
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
  const { gallery, acts } = sheet;
  const [papers, money] = await Promise.all([
    readPapers(actor, sheet),
    readMoneyPapers(actor, sheet),
  ]);
  const { shown, jobs, days, time } = papers;
  const ready = await readyOfJobs(actor, jobs, sheet.telling.today);
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
        <Band label="From the agreement to the wall" {...bandOf(sheet, ready)} />
      </div>
      <NextStep sheet={sheet} shown={shown} days={days} roles={actor.roles} />
      <Standings sheet={sheet} />
      {money ? <MoneyPapers sheet={sheet} money={money} /> : null}
      <ShownWall sheet={sheet} shown={shown} />
      <Columns
        wide={<JobLines sheet={sheet} jobs={jobs} actor={actor} />}
        beside={
          <AppointmentLines
            sheet={sheet}
            days={days}
            seesDiary={isAllowed(actor.roles, 'diary.see')}
          />
        }
      />
      <AssemblyLines sheet={sheet} actor={actor} />
      <TileWallLines sheet={sheet} actor={actor} />
      <SendingLines sheet={sheet} actor={actor} />
      <WallLines sheet={sheet} actor={actor} />
      <CareLines sheet={sheet} actor={actor} />
      <ProgressLines sheet={sheet} progress={papers.progress} />
      {time ? <TimeLines sheet={sheet} time={time} /> : null}
      <PageLines
        sheet={sheet}
        links={papers.links}
        mails={money?.mails ?? []}
        answers={papers.answers}
        may={{ open: acts.has('page'), offer: acts.has('days') }}
      />
      <RequestLines sheet={sheet} pictures={papers.pictures} />
      <History lines={papers.history} zone={gallery.timeZone} />
      {acts.has('end') ? <EndIt number={sheet.number} /> : null}
    </>
  );
}

type MoneyPapersProps = Readonly<{
  sheet: Sheet;
  money: NonNullable<Awaited<ReturnType<typeof readMoneyPapers>>>;
}>;

function MoneyPapers({ sheet, money }: MoneyPapersProps) {
  const { lines, proposals, agreement, changes, tax, kept } = money;
  return (
    <>
      <MoneyLines sheet={sheet} lines={lines} />
      {agreement ? null : <ProposalLines {...{ sheet, proposals, kept }} />}
      <AgreementLines {...{ sheet, proposals, agreement, changes, tax }} />
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

function bandOf(sheet: Sheet, ready: readonly (ReadyDays | null)[]) {
  const { band, telling, agreement, handOver, ending } = sheet;
  const pegs = band.map(({ name, state, on }) => ({
    name,
    state: pegStates[state],
    when: on ? dayWord(on, telling.today) : undefined,
  }));
  const promisedOn = agreement?.promisedOn;
  if (!promisedOn) return { pegs };
  const isOpen = handOver === null && ending === null;
  const sure = isOpen ? sureness(promisedOn, ready) : null;
  const told = isOpen ? toldDay(sheet.facts) : null;
  return {
    pegs,
    promised: {
      when: formatDay(promisedOn, 'long'),
      sure: sure ?? undefined,
      told: told ? formatDay(told, 'long') : undefined,
    },
  };
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
      {ending ? <EndedWords sheet={sheet} /> : null}
    </>
  );
}

/** What is held or owed after an early end; nothing once it is settled. */
function EndedWords({ sheet: { money, collector, number, telling } }: Readonly<{ sheet: Sheet }>) {
  const { overpaidCents = 0n, owedCents = 0n } = money ?? {};
  if (overpaidCents === 0n && owedCents === 0n) return null;
  const paper = <a href={`/commissions/${number}/end/pdf`}>The settlement</a>;
  return overpaidCents > 0n ? (
    <Notice kind="caution" title="Money is still held for them">
      {formatCents(overpaidCents, telling)} of what was paid is a debt to {collector.name} until it
      goes back. {paper} says how it came to that.
    </Notice>
  ) : (
    <Notice kind="caution" title="Some of what stays is not paid">
      {formatCents(owedCents, telling)} of what stays is still owed by {collector.name}. {paper}{' '}
      says how it came to that.
    </Notice>
  );
}
