import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Caution } from '@/app/ui/page/caution';
import type { Day } from '@/lib/dates/rules';
import type { JobStanding, StandingHere } from '@/lib/studio/reads/standing';
import { piecesWords, sinceWords, stepDaysWords } from '@/lib/studio/rules/words';
import { lossAt } from '../loss-at';
import { MoveSomeOn } from '../move-on';
import css from '../studio.module.css';

type WhereProps = Readonly<{ job: JobStanding; todayOn: Day; mayMove: boolean }>;

/** Where the pieces stand now: how many, since when, what to mind, and the move to the next step. */
export function WhereItStands({ job, todayOn, mayMove }: WhereProps) {
  return (
    <ul className={css['standings']}>
      {job.standings.map((here) => (
        <li key={here.position} className={css['standing']}>
          <h2>{headingOf(here)}</h2>
          <p className={css['since']}>{sinceWords(here.sinceOn, todayOn)}</p>
          {here.step ? <p>{stepSentence(here)}</p> : null}
          {here.cautions.map((caution) => (
            <Caution key={caution}>{caution}</Caution>
          ))}
          {here.burning.map((fire) => (
            <p key={fire.firingNumber}>
              {piecesWords(fire.pieces)} of them: in {fire.kiln},{' '}
              <Link href={`/studio/firings/${fire.firingNumber}`}>firing {fire.firingNumber}</Link>,
              lit {sinceWords(fire.litOn, todayOn).replace(/^since /, '')}.
            </p>
          ))}
          {mayMove && here.free > 0 && mayGoOn(job, here) ? (
            <MoveSomeOn job={job} here={here} />
          ) : null}
          {mayMove && here.free > 0 && here.position > 0 ? (
            <p>
              <ButtonLink href={lossAt(job, here)} variant="quiet" size="counter">
                Some are lost
              </ButtonLink>
            </p>
          ) : null}
        </li>
      ))}
    </ul>
  );
}

function mayGoOn(job: JobStanding, here: StandingHere): boolean {
  return here.position > 0 || (job.missing.length === 0 && !job.commission?.hasEnded);
}

function headingOf({ pieces, name, position }: StandingHere): string {
  if (position === 0) return `${piecesWords(pieces)} to begin`;
  return name === 'finished'
    ? `${piecesWords(pieces)} finished`
    : `${piecesWords(pieces)} at ${name}`;
}

function stepSentence({ step, tooLongDays }: StandingHere): string {
  if (!step) return '';
  const commonly = `Commonly ${stepDaysWords(step)}.`;
  if (tooLongDays === 0) return commonly;
  const over = tooLongDays === 1 ? 'a day' : `${tooLongDays} days`;
  return `${commonly} They have stood here ${over} longer than that.`;
}
