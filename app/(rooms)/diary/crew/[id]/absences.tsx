import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import type { AbsenceShown, CrewMember } from '@/lib/installation/reads/crew/people';
import { AppointmentRow } from '../../appointment-row';
import { takeAbsenceBack, writeAbsence } from '../actions';
import { awayWords } from '../week-words';
import css from '../../diary.module.css';

type AbsencesProps = Readonly<{ member: CrewMember; zone: string }>;

/** The coming days on which somebody is away, and one more of them. */
export function Absences({ member, zone }: AbsencesProps) {
  const { absences, mayKeep } = member;
  return (
    <Section title="Away">
      {absences.length === 0 ? (
        <Empty title="Not away">
          Days on which {member.name} is away stand here; nothing is booked on them without asking.
        </Empty>
      ) : (
        <ul className={css['lines']}>
          {absences.map((absence) => (
            <OneAbsence key={absence.id} {...{ absence, zone, mayKeep }} />
          ))}
        </ul>
      )}
      {mayKeep ? (
        <FormFrame action={writeAbsence} label="Write down days away">
          <RequestKey />
          <input type="hidden" name="staffId" value={member.id} />
          <div className={css['times']}>
            <Field name="fromOn" label="From" kind="day" width="short" required />
            <Field name="toOn" label="Until" kind="day" width="short" optional />
          </div>
          <Field name="why" label="Why" maxLength={200} optional />
          <SubmitButton>Write it down</SubmitButton>
        </FormFrame>
      ) : null}
    </Section>
  );
}

type OneAbsenceProps = Readonly<{ absence: AbsenceShown; zone: string; mayKeep: boolean }>;

function OneAbsence({ absence, zone, mayKeep }: OneAbsenceProps) {
  return (
    <li className={css['day']}>
      <strong>{awayWords(absence)}</strong>
      {absence.booked.length > 0 ? (
        <>
          <Notice kind="caution">Something is booked on these days all the same.</Notice>
          {absence.booked.map((one) => (
            <AppointmentRow key={one.id} appointment={one} zone={zone} />
          ))}
        </>
      ) : null}
      {mayKeep ? (
        <FormFrame action={takeAbsenceBack} label={`Take back ${awayWords(absence)}`}>
          <RequestKey />
          <input type="hidden" name="absenceId" value={absence.id} />
          <SubmitButton variant="quiet">Take it back</SubmitButton>
        </FormFrame>
      ) : null}
    </li>
  );
}
