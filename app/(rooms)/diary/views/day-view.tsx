import { Empty } from '@/app/ui/page/empty';
import { Section } from '@/app/ui/page/section';
import { addDays, formatDay, type Day } from '@/lib/dates/rules';
import type { InDiary } from '@/lib/installation/reads';
import { listCrew, readWays, type CrewMember } from '@/lib/installation/reads/crew/people';
import { absentOn, hoursOn, minuteWords } from '@/lib/installation/rules/crew/hours';
import type { Ways } from '@/lib/installation/rules/crew/ways';
import { stepsOfDay } from '@/lib/installation/rules/diary/person-day';
import { othersOn } from '@/lib/installation/rules/diary/others';
import { dayToldWords } from '@/lib/installation/rules/diary/weeks';
import { AppointmentRow } from '../appointment-row';
import { Around } from './around';
import { DaySteps } from './day-steps';
import { OtherLines } from './other-lines';
import { readDays, type Looking } from './shared';
import css from './views.module.css';

/** One day: everyone who goes somewhere with their ways, who is free and who is away. */
export async function DayView({ day, ...looking }: Looking & Readonly<{ day: Day }>) {
  const { actor, zone, todayOn } = looking;
  const [{ listed, others }, crew, ways] = await Promise.all([
    readDays(looking, { fromOn: day, untilOn: day }),
    listCrew(actor, { todayOn: day, zone }),
    readWays(actor),
  ]);
  const stands = listed.filter((one) => one.calledOffWhy === null);
  const off = listed.filter((one) => one.calledOffWhy !== null);
  const people = crew.map((member) => ({ member, booked: bookedOf(member, stands) }));
  const [goes, stays] = [people.filter(isBooked), people.filter((one) => !isBooked(one))];
  const lines = othersOn(others, day);
  const [before, after] = [addDays(day, -1), addDays(day, 1)];
  return (
    <div className={css['day-view']}>
      <Around
        title={dayToldWords(day, todayOn)}
        before={{
          href: `/diary?day=${before}`,
          name: `The day before, ${formatDay(before, 'long')}`,
        }}
        after={{ href: `/diary?day=${after}`, name: `The day after, ${formatDay(after, 'long')}` }}
      />
      {listed.length + lines.length === 0 ? (
        <Empty title="Nothing on this day">
          Nobody goes anywhere, and the gallery has nothing else.
        </Empty>
      ) : null}
      <OtherLines lines={lines} />
      <div className={css['people']}>
        {goes.map(({ member, booked }) => (
          <Person key={member.id} {...{ member, booked, ways, zone, day }} />
        ))}
      </div>
      {off.length > 0 ? (
        <Section title="Called off">
          {off.map((one) => (
            <AppointmentRow key={one.id} appointment={one} zone={zone} />
          ))}
        </Section>
      ) : null}
      <Section title="Everyone else">
        <ul className={css['stays']}>
          {stays.map(({ member }) => (
            <li key={member.id}>
              <strong>{member.name}</strong>: {hoursToldOn(member, day)}
            </li>
          ))}
        </ul>
      </Section>
    </div>
  );
}

type PersonProps = Readonly<{
  member: CrewMember;
  booked: readonly InDiary[];
  ways: Ways;
  zone: string;
  day: Day;
}>;

function Person({ member, booked, ways, zone, day }: PersonProps) {
  return (
    <section className={css['person']}>
      <h3>{member.name}</h3>
      <p className={css['quiet']}>{hoursToldOn(member, day)}</p>
      <DaySteps steps={stepsOfDay(booked, ways)} zone={zone} />
    </section>
  );
}

function bookedOf({ id }: CrewMember, stands: readonly InDiary[]): InDiary[] {
  return stands.filter((one) => one.leadId === id || one.others.some((other) => other.id === id));
}

function isBooked({ booked }: { booked: readonly InDiary[] }): boolean {
  return booked.length > 0;
}

/** When somebody works that day, or that they are away. */
function hoursToldOn({ workDays, absences }: CrewMember, day: Day): string {
  const absence = absentOn(absences, day);
  if (absence) return absence.why === '' ? 'away' : `away, ${absence.why}`;
  const hours = hoursOn(workDays, day);
  if (!hours) return 'does not work that day';
  return `works ${minuteWords(hours.fromMinute)} to ${minuteWords(hours.toMinute)}`;
}
