import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { Columns, Section } from '@/app/ui/page/section';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Picture } from '@/app/ui/piece/picture';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf, daysBetween } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { jobNumberInput, undoMoveInput } from '@/lib/studio/input';
import { findJob, findMove, type JobTold } from '@/lib/studio/reads/job';
import { beforeClayWords, piecesWords } from '@/lib/studio/rules/words';
import { techniqueWords } from '@/lib/studio/rules/routes';
import { findPartMap, type PartMapShown } from '@/lib/studio/reads/parts/map';
import { ForWhom } from '../job-words';
import { JustMoved } from '../just-moved';
import { ReadyBy } from '../days/parts/ready-by';
import { JobHistory } from './job-history';
import { JobRouteList } from './job-route';
import { PartsGlance } from './parts/glance';
import { SpareOnes } from './spare-ones';
import { ReadyWhen } from './ready-when';
import { WhereItStands } from './where-it-stands';
import css from '../studio.module.css';

type JobPageProps = Readonly<{
  params: Promise<{ number: string }>;
  searchParams: Promise<{ moved?: string | string[] }>;
}>;

export async function generateMetadata({ params }: JobPageProps): Promise<Metadata> {
  return { title: `Job ${(await params).number}` };
}

/** One job: where its pieces stand, its route, when it should be ready, and who moved what when. */
export default async function JobPage({ params, searchParams }: JobPageProps) {
  const actor = await requireActor('studio.see');
  const number = jobNumberInput.safeParse((await params).number);
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const job = number.success ? await findJob(actor, number.data, todayOn) : null;
  if (!job) notFound();
  const read = undoMoveInput.shape.moveId.safeParse((await searchParams).moved);
  const move = read.success ? await findMove(actor, read.data) : null;
  const mayMove = isAllowed(actor.roles, 'studio.move');
  const map = job.hasParts ? await findPartMap(actor, job.number) : null;
  return (
    <>
      <PageHead
        title={job.title}
        work
        back={{ href: '/studio', name: 'Studio' }}
        lead={
          <>
            {techniqueWords[job.technique]}, <ForWhom job={job} todayOn={todayOn} />.{' '}
            {countWords(job)}
          </>
        }
      />
      <div className={css['told']}>
        <Told job={job} />
      </div>
      <Columns
        wide={
          <>
            <WhereItStands job={job} todayOn={todayOn} mayMove={mayMove} />
            {mayMove && !job.hasParts ? <SpareOnes job={job} /> : null}
            <Drawing job={job} map={map} mayKeep={isAllowed(actor.roles, 'studio.keep')} />
            <Section title="The route">
              <JobRouteList job={job} />
            </Section>
          </>
        }
        beside={
          <>
            <JobPictureHung job={job} />
            <Section title="When it is ready">
              <ReadyBy actor={actor} jobId={job.id} todayOn={todayOn} noticeHref={noticeOf(job)} />
              <ReadyWhen job={job} todayOn={todayOn} />
            </Section>
            <JobHistory job={job} todayOn={todayOn} zone={timeZone} mayMove={mayMove} />
          </>
        }
      />
      {move ? <JustMoved move={move} mayMove={mayMove} backTo="job" /> : null}
    </>
  );
}

/** Where its collector is told of another day. */
function noticeOf({ commission }: JobTold): string | undefined {
  return commission ? `/commissions/${commission.number}/delay` : undefined;
}

/** How many were begun, how many are wanted, and what became of the others. */
function countWords({ pieces, wanted, lost, begunAnew }: JobTold): string {
  const begun = pieces + begunAnew;
  const good = wanted === 1 ? 'one good one' : `${wanted} good ones`;
  const told = [
    begun === wanted ? piecesWords(begun) : `${piecesWords(begun)} for ${good}`,
    lost > 0 ? `${lost} lost` : '',
    begunAnew > 0 ? `${begunAnew} begun anew` : '',
  ];
  return `${told.filter((part) => part !== '').join(', ')}.`;
}

function Told({ job }: Readonly<{ job: JobTold }>) {
  if (job.commission?.hasEnded) {
    return (
      <Notice kind="caution">
        Commission {job.commission.number} has ended. What stands here is not needed for it any
        more.
      </Notice>
    );
  }
  const waits = job.missing.length > 0 && job.standings.some((here) => here.position === 0);
  if (waits && job.commission) {
    return (
      <Notice kind="caution">
        The clay waits for {beforeClayWords(job.missing, null)}. All of it is kept on the sheet of
        commission {job.commission.number}; the owner can let the making begin before, and says why.
      </Notice>
    );
  }
  const lateDays = job.neededOn && job.ready ? daysBetween(job.neededOn, job.ready.likelyOn) : 0;
  if (lateDays <= 0) return null;
  return (
    <Notice kind="caution">
      At the usual pace it is ready {lateDays === 1 ? 'a day' : `${lateDays} days`} after it is
      needed. Better said early than late.
    </Notice>
  );
}

type DrawingProps = Readonly<{ job: JobTold; map: PartMapShown | null; mayKeep: boolean }>;

/** The numbered drawing, or the way to it while the clay of a relief is not begun. */
function Drawing({ job, map, mayKeep }: DrawingProps) {
  if (map) {
    return (
      <Section title="The numbered drawing">
        <PartsGlance map={map} />
      </Section>
    );
  }
  if (!mayKeep || job.moves.length > 0 || job.technique !== 'slab_relief') return null;
  return (
    <Section title="The numbered drawing">
      <p>
        Before its clay is begun, the relief can be cut into numbered parts, each with a fate of its
        own.
      </p>
      <p>
        <ButtonLink href={`/studio/${job.number}/parts/draw`} variant="quiet">
          Draw its parts
        </ButtonLink>
      </p>
    </Section>
  );
}

function JobPictureHung({ job }: Readonly<{ job: JobTold }>) {
  if (!job.picture) return null;
  const { fileId, widthPx, heightPx } = job.picture;
  return (
    <Picture src={`/files/${fileId}`} alt={job.title} width={widthPx} height={heightPx} first />
  );
}
