import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Slab } from '@/app/ui/page/section';
import { clockTime } from '@/lib/dates/rules/time-of-day';
import type { AppointmentTold } from '@/lib/installation/reads';
import { callOff, move, tellOfIt } from '../actions';
import { AskedFields } from '@/app/ui/diary/asked-fields';
import { ToldFields, WhenFields, WhereFields } from '@/app/ui/diary/when-fields';

type ChangeItProps = Readonly<{
  appointment: AppointmentTold;
  leads: readonly { id: string; name: string }[];
  zone: string;
}>;

/** Moving an appointment, and calling it off; each knows how it stood when it was drawn. */
export function ChangeIt({ appointment, leads, zone }: ChangeItProps) {
  const { startsOn, startsAt, endsAt, leadId, others, address, travelMinutes } = appointment;
  return (
    <>
      <Slab>
        <h2>Move it</h2>
        <FormFrame action={move} label="Move it">
          <AsSeen appointment={appointment} />
          <WhenFields
            people={leads}
            leadId={leadId}
            crewIds={others.map(({ id }) => id)}
            day={startsOn}
            from={clockTime(startsAt, zone)}
            to={clockTime(endsAt, zone)}
          />
          <WhereFields address={address} travelMinutes={travelMinutes} />
          <Field name="whyMoved" label="Why it is moved" maxLength={300} optional />
          <AskedFields />
          <SubmitButton>Move it</SubmitButton>
        </FormFrame>
      </Slab>
      <Slab>
        <h2>Call it off</h2>
        <FormFrame action={callOff} label="Call it off">
          <AsSeen appointment={appointment} />
          <Field name="why" label="Why" maxLength={300} required />
          <SubmitButton variant="danger">Call it off</SubmitButton>
        </FormFrame>
      </Slab>
    </>
  );
}

/** Telling more of it: who meets us, what they have ready, what else to know. */
export function TellMore({ appointment }: Readonly<{ appointment: AppointmentTold }>) {
  const { note, meets, prepares, fallBack } = appointment;
  return (
    <Slab>
      <h2>Tell more of it</h2>
      <FormFrame action={tellOfIt} label="Tell more of it">
        <AsSeen appointment={appointment} />
        <ToldFields {...{ note, meets, prepares, fallBack }} />
        <SubmitButton variant="quiet">Keep it</SubmitButton>
      </FormFrame>
    </Slab>
  );
}

function AsSeen({ appointment }: Readonly<{ appointment: AppointmentTold }>) {
  return (
    <>
      <RequestKey />
      <input type="hidden" name="appointmentId" value={appointment.id} />
      <input type="hidden" name="seenSequence" value={appointment.sequence} />
    </>
  );
}
