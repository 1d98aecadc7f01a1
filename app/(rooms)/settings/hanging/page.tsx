import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { getGallery } from '@/lib/platform/settings';
import { formatLength } from '@/lib/units/rules';
import { keepHanging } from './actions';

export const metadata: Metadata = { title: 'Hanging' };

/** Where pieces hang, what their fixings must carry, and when one looks at them again. */
export default async function HangingTerms() {
  const actor = await requireActor('settings.keep');
  const gallery = await getGallery();
  return (
    <>
      <PageHead
        title="Hanging"
        back={{ href: '/staff', name: 'Staff' }}
        lead="How high pieces hang, what their fixings must carry, and when somebody looks again."
      />
      <InThisRoom room="settings" here="hanging" roles={actor.roles} />
      <FormFrame action={keepHanging} label="Hanging">
        <RequestKey />
        <Field
          name="eyeHeightUm"
          label="The middle of a piece, above the floor"
          hint="57 to 60 in is common practice where people stand; lower where they sit."
          kind="measure"
          defaultValue={formatLength(gallery.eyeHeightUm, gallery.lengthUnit)}
          width="short"
          required
        />
        <Field
          name="hangSafety"
          label="Fixings carry at least so many times what hangs on them"
          hint="Two to three times is common practice; four over people and in public places."
          kind="count"
          defaultValue={String(gallery.hangSafetyPercent / 100)}
          width="short"
          required
        />
        <Field
          name="fixingsLookMonths"
          label="Months between looks at the fixings of heavy pieces"
          kind="count"
          defaultValue={String(gallery.fixingsLookMonths)}
          width="short"
          required
        />
        <Caution>
          These figures are for planning. On site the wall decides; local codes and a licensed
          contractor have the last word.
        </Caution>
        <SubmitButton size="counter">Keep this</SubmitButton>
      </FormFrame>
    </>
  );
}
