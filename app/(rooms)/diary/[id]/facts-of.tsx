import { InstantText } from '@/app/ui/figures/day-text';
import type { Fact } from '@/app/ui/page/facts';
import { timeWords } from '@/lib/dates/rules/time-of-day';
import type { AppointmentTold } from '@/lib/installation/reads';
import { lastsWords } from '@/lib/installation/rules/crew/hours';
import { namesWords } from '@/lib/installation/rules/diary/words';
import { ForWhom } from '../for-whom';

/** What is known of an appointment; what is not is said. */
export function factsOf(appointment: AppointmentTold, zone: string): Fact[] {
  const { address, leadName, others, note, meets, prepares, fallBack } = appointment;
  const along = namesWords(others.map(({ name }) => name));
  return [
    { name: 'Where', value: address },
    { name: 'The way', value: wayWords(appointment, zone), notKnown: 'none noted' },
    { name: 'Who goes', value: along === '' ? `${leadName}, alone` : `${leadName}, with ${along}` },
    {
      name: 'For',
      value: <ForWhom commission={appointment.commission} phone={appointment.collectorPhone} />,
    },
    { name: 'Who meets us', value: orNull(meets), notKnown: 'not known yet' },
    { name: 'What they have ready', value: orNull(prepares), notKnown: 'nothing agreed yet' },
    { name: 'If weather forbids it', value: orNull(fallBack), notKnown: 'nothing agreed yet' },
    { name: 'What to know', value: orNull(note), notKnown: 'nothing noted' },
    { name: 'Booked by', value: <BookedBy appointment={appointment} zone={zone} /> },
  ];
}

function orNull(text: string): string | null {
  return text === '' ? null : text;
}

/** When to leave for it and when to be back; null where no way is known. */
function wayWords({ travelMinutes, startsAt, endsAt }: AppointmentTold, zone: string) {
  if (travelMinutes === 0) return null;
  const leavesAt = new Date(startsAt.getTime() - travelMinutes * 60_000);
  const backAt = new Date(endsAt.getTime() + travelMinutes * 60_000);
  return (
    `${lastsWords(travelMinutes)} each way: from the gallery at ${timeWords(leavesAt, zone)}, ` +
    `back about ${timeWords(backAt, zone)}`
  );
}

type BookedByProps = Readonly<{ appointment: AppointmentTold; zone: string }>;

function BookedBy({ appointment, zone }: BookedByProps) {
  const { bookedBy, bookedAt, sequence } = appointment;
  const since = sequence === 1 ? 'once' : `${sequence} times`;
  return (
    <>
      {bookedBy}, <InstantText at={bookedAt} zone={zone} />
      {sequence > 0 ? `; changed ${since} since` : ''}
    </>
  );
}
