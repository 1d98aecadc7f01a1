import { ButtonLink } from '@/app/ui/button/button';
import { Section } from '@/app/ui/page/section';
import type { Day } from '@/lib/dates/rules';
import type { InDiary } from '@/lib/installation/reads';
import { DaysTold } from '@/app/(rooms)/diary/views/days-told';

type InTheDiaryProps = Readonly<{ appointments: readonly InDiary[]; zone: string; todayOn: Day }>;

/** Today's appointments and the next ones. */
export function InTheDiary({ appointments, zone, todayOn }: InTheDiaryProps) {
  if (appointments.length === 0) return null;
  return (
    <Section
      title="In the diary"
      act={
        <ButtonLink href="/diary" variant="quiet">
          The whole diary
        </ButtonLink>
      }
    >
      <DaysTold appointments={appointments} zone={zone} todayOn={todayOn} label="The next days" />
    </Section>
  );
}
