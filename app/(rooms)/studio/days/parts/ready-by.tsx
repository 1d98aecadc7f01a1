import Link from 'next/link';
import type { Actor } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { findReadyBy } from '@/lib/studio/reads/forecast/foretold';
import { forecastRefusalMessage } from '@/lib/studio/rules/forecast/model';
import { movedSentence } from '@/lib/studio/rules/forecast/telling/moved';
import { driveLine, lateInHundred } from '@/lib/studio/rules/forecast/telling/words';
import { lateWords, readySentence } from './sentences';
import css from '../days.module.css';

type ReadyByProps = Readonly<{
  actor: Actor;
  jobId: string;
  todayOn: Day;
  /** Where a notice of another day is written; left out where none can be. */
  noticeHref?: string | undefined;
}>;

/**
 * When a job is ready as it is foretold today, beside the day it is needed; what drives it, what
 * moved it, and where another day is told when it is beyond the promise. Nothing once it is finished.
 */
export async function ReadyBy({ actor, jobId, todayOn, noticeHref }: ReadyByProps) {
  const { now, before, anew, drives, refusal } = await findReadyBy(actor, jobId, todayOn);
  if (!now) {
    return refusal ? (
      <p className={css['quiet']}>No day can be told: {forecastRefusalMessage(refusal)}</p>
    ) : null;
  }
  const { readyOn } = now.told;
  const { neededOn } = now.of;
  const late = lateInHundred(now.told);
  const moved = movedSentence(before, { in80On: readyOn.in80, todayOn }, anew);
  const isBeyond = neededOn !== null && (readyOn.in80 === null || readyOn.in80 > neededOn);
  return (
    <div className={css['ready-by']}>
      <p>
        <strong>{readySentence(readyOn, todayOn)}</strong>
      </p>
      {neededOn && late !== null ? (
        <p className={isBeyond ? css['late'] : undefined}>{lateWords(late, neededOn, todayOn)}</p>
      ) : null}
      {moved ? <p>{moved}</p> : null}
      {drives.length > 0 ? (
        <p className={css['quiet']}>Most of it: {drives.slice(0, 3).map(driveLine).join('; ')}.</p>
      ) : null}
      {isBeyond && noticeHref ? (
        <p>
          The promised day is not likely to hold.{' '}
          <Link href={noticeHref}>Tell them of another day</Link>.
        </p>
      ) : null}
    </div>
  );
}
