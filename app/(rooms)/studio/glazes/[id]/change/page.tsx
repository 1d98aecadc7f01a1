import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { change } from '../../actions';
import { LaidOn, LooksFields } from '../../fields';
import { readGlaze, type GlazeParams } from '../../read-glaze';

export const metadata: Metadata = { title: 'Change a glaze' };

/** What is known of a glaze, to be changed; its recipes stay as they were written. */
export default async function ChangeGlaze({ params }: Readonly<{ params: GlazeParams }>) {
  const actor = await requireActor('studio.keep');
  const { glaze } = await readGlaze(actor, params);
  return (
    <>
      <PageHead
        title={`Change ${glaze.name}`}
        back={{ href: `/studio/glazes/${glaze.id}`, name: glaze.name }}
        lead="Its recipe is changed by writing another version."
      />
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      <FormFrame action={change} label={`Change ${glaze.name}`}>
        <RequestKey />
        <input type="hidden" name="glazeId" value={glaze.id} />
        <Field
          name="name"
          label="Name"
          width="half"
          maxLength={80}
          defaultValue={glaze.name}
          required
        />
        <LaidOn cone={glaze.cone} coats={glaze.coats} />
        <Field
          name="note"
          label="What to mind"
          kind="textarea"
          rows={3}
          defaultValue={glaze.note}
          optional
        />
        <LooksFields lab={glaze.lab} kept />
        <Field
          name="endedOn"
          label="No longer mixed since"
          hint="Leave it empty while it is mixed."
          kind="day"
          width="short"
          defaultValue={glaze.endedOn ?? ''}
          optional
        />
        <SubmitButton size="counter" pendingText="Keeping it…">
          Keep it
        </SubmitButton>
      </FormFrame>
    </>
  );
}
