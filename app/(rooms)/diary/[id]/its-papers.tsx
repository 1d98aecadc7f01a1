import { ButtonLink } from '@/app/ui/button/button';
import type { AppointmentTold } from '@/lib/installation/reads';
import css from '../diary.module.css';

/** Where the day itself is worked from: the work order, the wall, and the file for a calendar. */
export function ItsPapers({ appointment }: Readonly<{ appointment: AppointmentTold }>) {
  const { id, kind, commission } = appointment;
  return (
    <p className={css['papers']}>
      <ButtonLink href={`/diary/${id}/work`} variant="quiet">
        Work order
      </ButtonLink>
      {commission && kind !== 'fetching' ? (
        <ButtonLink href={`/commissions/${commission.number}/wall`} variant="quiet">
          The wall
        </ButtonLink>
      ) : null}
      <ButtonLink href={`/diary/${id}/ics`} variant="quiet" download>
        For a calendar
      </ButtonLink>
    </p>
  );
}
