import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Slab } from '@/app/ui/page/section';
import { weekdaysInOrder } from '@/lib/installation/input/crew/crew';
import type { CrewMember } from '@/lib/installation/reads/crew/people';
import { timeOfMinute } from '@/lib/installation/rules/crew/hours';
import { keepTheirHours } from '../actions';
import { weekdayNames } from '../week-words';
import css from '../../diary.module.css';

/** The hours of somebody by weekday; the owner keeps them. */
export function HoursForm({ member }: Readonly<{ member: CrewMember }>) {
  return (
    <Slab>
      <h2>Hours</h2>
      <p>A day left empty is free. With every day empty the gallery’s hours hold.</p>
      <FormFrame action={keepTheirHours} label="Hours by weekday">
        <RequestKey />
        <input type="hidden" name="staffId" value={member.id} />
        {weekdaysInOrder.map((weekday) => (
          <HoursOfDay key={weekday} weekday={weekday} member={member} />
        ))}
        <SubmitButton>Keep the hours</SubmitButton>
      </FormFrame>
    </Slab>
  );
}

type HoursOfDayProps = Readonly<{ weekday: number; member: CrewMember }>;

function HoursOfDay({ weekday, member }: HoursOfDayProps) {
  const hours = member.workDays.find((day) => day.weekday === weekday);
  const name = weekdayNames[weekday] ?? '';
  return (
    <div className={css['times']}>
      <Field
        name={`from.${weekday}`}
        label={`${name} from`}
        kind="time"
        width="short"
        defaultValue={hours ? timeOfMinute(hours.fromMinute) : undefined}
      />
      <Field
        name={`to.${weekday}`}
        label={`${name} to`}
        kind="time"
        width="short"
        defaultValue={hours ? timeOfMinute(hours.toMinute) : undefined}
      />
    </div>
  );
}
