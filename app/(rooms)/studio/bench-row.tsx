import Link from 'next/link';
import { Caution } from '@/app/ui/page/caution';
import { Picture } from '@/app/ui/piece/picture';
import type { Day } from '@/lib/dates/rules';
import type { OnBench } from '@/lib/studio/reads';
import { idOf } from './glance';
import { lossAt } from './loss-at';
import { beforeClayWords, piecesWords, sinceWords } from '@/lib/studio/rules/words';
import { ForWhom } from './job-words';
import { MoveAllOn } from './move-on';
import css from './studio.module.css';

type BenchRowProps = Readonly<{
  name: string;
  standing: readonly OnBench[];
  todayOn: Day;
  mayMove: boolean;
}>;

/** One step of the bench: its name, how much stands there, what to mind, and each job. */
export function BenchRow({ name, standing, todayOn, mayMove }: BenchRowProps) {
  const pieces = standing.reduce((sum, one) => sum + one.here.pieces, 0);
  const cautions = [...new Set(standing.flatMap((one) => one.here.cautions))];
  return (
    <section className={css['row']} aria-label={name} id={`at-${idOf(name)}`}>
      <div className={css['row-head']}>
        <h2>{name}</h2>
        <p className={css['row-count']}>{piecesWords(pieces)}</p>
        {cautions.length > 0 ? (
          <details className={css['mind']}>
            <summary>What to mind here</summary>
            {cautions.map((caution) => (
              <Caution key={caution}>{caution}</Caution>
            ))}
          </details>
        ) : null}
      </div>
      <ul className={css['jobs']}>
        {standing.map((one) => (
          <li key={placeOf(one)} id={`job-${placeOf(one)}`}>
            <JobHere one={one} todayOn={todayOn} mayMove={mayMove} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function placeOf({ job, here }: OnBench): string {
  return `${job.number}-${here.position}`;
}

type JobHereProps = Readonly<{ one: OnBench; todayOn: Day; mayMove: boolean }>;

function JobHere({ one, todayOn, mayMove }: JobHereProps) {
  const { job, here } = one;
  const waits = here.position === 0 && job.missing.length > 0;
  return (
    <article className={css['job']}>
      <Link
        href={`/studio/${job.number}`}
        className={css['job-picture']}
        tabIndex={-1}
        aria-hidden="true"
      >
        {job.picture ? (
          <Picture
            src={`/files/${job.picture.fileId}`}
            alt=""
            width={job.picture.widthPx}
            height={job.picture.heightPx}
            size="thumb"
          />
        ) : (
          <span className={css['no-picture']} />
        )}
      </Link>
      <div className={css['job-words']}>
        <h3>
          <Link href={`/studio/${job.number}`} className={css['job-title']}>
            {job.title}
          </Link>
        </h3>
        <p>
          <strong>{piecesWords(here.pieces)}</strong>
          {here.pieces < job.wanted ? ` of ${job.wanted} wanted` : ''}{' '}
          <ForWhom job={job} todayOn={todayOn} />
        </p>
        <HowItStands one={one} todayOn={todayOn} waits={waits} />
      </div>
      {mayMove && !waits ? <Acts one={one} /> : null}
    </article>
  );
}

type HowItStandsProps = Readonly<{ one: OnBench; todayOn: Day; waits: boolean }>;

function HowItStands({ one: { job, here }, todayOn, waits }: HowItStandsProps) {
  return (
    <p className={css['since']}>
      {waits
        ? `waits for ${beforeClayWords(job.missing, null)}`
        : sinceWords(here.sinceOn, todayOn)}
      {here.burning.map((fire) => (
        <span key={fire.firingNumber}>
          {' · '}
          <Link href={`/studio/firings/${fire.firingNumber}`}>
            {fire.pieces === here.pieces ? 'in' : `${fire.pieces} in`} {fire.kiln}, firing{' '}
            {fire.firingNumber}
          </Link>
        </span>
      ))}
      {here.tooLongDays > 0 && here.step ? (
        <strong className={css['late']}> · commonly {here.step.longestDays} at the longest</strong>
      ) : null}
      {job.commission?.hasEnded ? (
        <strong className={css['late']}> · its commission has ended</strong>
      ) : null}
    </p>
  );
}

/** One touch moves all of them on; a quieter one tells a loss. */
function Acts({ one: { job, here } }: Readonly<{ one: OnBench }>) {
  const mayBeLost = here.position > 0 && here.free > 0 && here.nextName !== null;
  return (
    <div className={css['acts']}>
      <MoveAllOn job={job} here={here} />
      {mayBeLost ? (
        <p className={css['lost']}>
          {here.step?.kind === 'fire' ? (
            <Link href="/studio/firings/new">Plan a firing</Link>
          ) : null}
          <Link href={lossAt(job, here)}>Some are lost</Link>
        </p>
      ) : null}
    </div>
  );
}
