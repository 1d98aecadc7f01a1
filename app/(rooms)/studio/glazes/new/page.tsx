import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { add } from '../actions';
import { LaidOn, LooksFields, RecipeFields } from '../fields';

export const metadata: Metadata = { title: 'Write a glaze down' };

/** A glaze for the book; its recipe and pictures can come later. */
export default async function NewGlaze() {
  const actor = await requireActor('studio.keep');
  return (
    <>
      <PageHead title="Write a glaze down" back={{ href: '/studio/glazes', name: 'Glaze book' }} />
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      <FormFrame action={add} label="Write a glaze down">
        <RequestKey />
        <Field name="name" label="Name" width="half" maxLength={80} required />
        <LaidOn cone="6" coats={3} />
        <RecipeFields materials={[]} optional />
        <Field
          name="note"
          label="What to mind"
          hint="How thick, what it does beside others, how it is cooled."
          kind="textarea"
          rows={3}
          optional
        />
        <LooksFields lab={null} />
        <SubmitButton size="counter" pendingText="Writing it down…">
          Write it down
        </SubmitButton>
      </FormFrame>
    </>
  );
}
