import Link from 'next/link';
import type { Day } from '@/lib/dates/rules';
import type { JobStanding } from '@/lib/studio/reads/standing';
import { shortDay } from '@/lib/studio/rules/words';
import css from './studio.module.css';

type ForWhomProps = Readonly<{ job: JobStanding; todayOn: Day }>;

/** Whom a job is for and by when, as the end of a sentence: "for Marit Oland, by 12 June". */
export function ForWhom({ job, todayOn }: ForWhomProps) {
  const { commission, neededOn } = job;
  const late = neededOn !== null && neededOn < todayOn && job.ready !== null;
  return (
    <>
      {commission ? (
        <>
          for {commission.collector},{' '}
          <Link href={`/commissions/${commission.number}`}>commission {commission.number}</Link>
        </>
      ) : (
        `for stock${job.skuCode ? `, ${job.skuCode}` : ''}`
      )}
      {neededOn ? (
        <>
          {', '}
          <span className={late ? css['late'] : undefined}>
            {late ? 'needed since' : 'by'}{' '}
            <time dateTime={neededOn}>{shortDay(neededOn, todayOn)}</time>
          </span>
        </>
      ) : null}
    </>
  );
}
