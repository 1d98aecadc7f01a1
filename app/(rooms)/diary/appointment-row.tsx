import Link from 'next/link';
import type { InDiary } from '@/lib/installation/reads';
import { lastsWords } from '@/lib/installation/rules/crew/hours';
import { hoursWords, kindTitles, namesWords } from '@/lib/installation/rules/diary/words';
import css from './diary.module.css';

type AppointmentRowProps = Readonly<{ appointment: InDiary; zone: string }>;

/** One appointment in a day: its hours, what and for whom, where, and who leads it. */
export function AppointmentRow({ appointment, zone }: AppointmentRowProps) {
  const { commission, calledOffWhy, others, travelMinutes } = appointment;
  const along = namesWords(others.map(({ name }) => name));
  return (
    <Link
      href={`/diary/${appointment.id}`}
      className={css['appointment']}
      data-off={calledOffWhy !== null || undefined}
    >
      <span className={css['hours']}>{hoursWords(appointment, zone)}</span>
      <span className={css['what']}>
        <span className={css['kind']}>{kindTitles[appointment.kind]}</span>
        {commission ? (
          <>
            {' '}
            <cite>{commission.title}</cite>, for {commission.collector}
          </>
        ) : null}
        <span className={css['where']}>
          {appointment.address} · {appointment.leadName} leads
          {along === '' ? null : `, with ${along}`}
          {travelMinutes === 0 ? null : ` · ${lastsWords(travelMinutes)} away`}
        </span>
        {calledOffWhy ? <span className={css['off']}>Called off: {calledOffWhy}</span> : null}
      </span>
    </Link>
  );
}
