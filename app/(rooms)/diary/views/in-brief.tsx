import Link from 'next/link';
import { timeWords } from '@/lib/dates/rules/time-of-day';
import type { InDiary } from '@/lib/installation/reads';
import { hoursWords, kindTitles, namesWords } from '@/lib/installation/rules/diary/words';
import css from './views.module.css';

type InBriefProps = Readonly<{ appointment: InDiary; zone: string; names?: boolean | undefined }>;

/** An appointment in a narrow place: its hours, what it is, for what, and who goes. */
export function InBrief({ appointment, zone, names }: InBriefProps) {
  const { id, kind, commission, address, leadName, others, calledOffWhy } = appointment;
  const going = namesWords([leadName, ...others.map(({ name }) => name)]);
  return (
    <Link
      href={`/diary/${id}`}
      prefetch={false}
      className={css['brief']}
      data-off={calledOffWhy !== null || undefined}
      title={hoursWords(appointment, zone)}
    >
      <span className={css['quiet']}>{timeWords(appointment.startsAt, zone)}</span>
      <span>
        {kindTitles[kind]} {commission ? <cite>{commission.title}</cite> : address}
      </span>
      {names ? <span className={css['quiet']}>{going}</span> : null}
      {calledOffWhy ? <span className={css['off']}>Called off: {calledOffWhy}</span> : null}
    </Link>
  );
}
