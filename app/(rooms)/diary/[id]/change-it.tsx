import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Slab } from '@/app/ui/page/section';
import type { AppointmentTold } from '@/lib/installation/reads';
import { clockTime } from '@/lib/dates/rules/time-of-day';
import { callOff, move } from '../actions';
import { WhenFields } from '../when-fields';

type ChangeItProps = Readonly<{
  appointment: AppointmentTold;
  leads: readonly { id: string; name: string }[];
  zone: string;
}>;

/** Moving an appointment, and calling it off; each knows how it stood when it was drawn. */
export function ChangeIt({ appointment, leads, zone }: ChangeItProps) {
  const { id, sequence, startsOn, startsAt, endsAt, leadId } = appointment;
  const seen = (
    <>
      <RequestKey />
      <input type="hidden" name="appointmentId" value={id} />
      <input type="hidden" name="seenSequence" value={sequence} />
    </>
  );
  return (
    <>
      <Slab>
        <h2>Move it</h2>
        <FormFrame action={move} label="Move it">
          {seen}
          <WhenFields
            leads={leads}
            leadId={leadId}
            day={startsOn}
            from={clockTime(startsAt, zone)}
            to={clockTime(endsAt, zone)}
          />
          <SubmitButton>Move it</SubmitButton>
        </FormFrame>
      </Slab>
      <Slab>
        <h2>Call it off</h2>
        <FormFrame action={callOff} label="Call it off">
          {seen}
          <Field name="why" label="Why" maxLength={300} required />
          <SubmitButton variant="danger">Call it off</SubmitButton>
        </FormFrame>
      </Slab>
    </>
  );
}
