import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { Outside } from '@/app/ui/page/outside';
import { hasStaff } from '@/lib/access/reads';
import { openGallery } from './actions';
import { FirstRates } from './first-rates';
import css from './first-run.module.css';
import { zoneOptions } from './zones';

export const metadata: Metadata = { title: 'Setting up' };
// Asked of the database each time, and drawn with the nonce of its request.
export const dynamic = 'force-dynamic';

/** The very first page: only while nobody works here yet. */
export default async function FirstRun() {
  if (await hasStaff()) redirect('/sign-in');
  return (
    <Outside title="Let us hang your name over the door">
      <p>
        A few things before the first piece goes on the wall. All but the time zone can be changed
        later.
      </p>
      <FormFrame action={openGallery} label="Set up the gallery">
        <fieldset className={css['part']}>
          <legend>The gallery</legend>
          <Field name="galleryName" label="Name of the gallery" required autoFocus />
          <Field
            name="timeZone"
            label="Time zone"
            kind="select"
            options={zoneOptions()}
            defaultValue="America/Los_Angeles"
            hint="Days begin and end by this clock, on receipts and in the books."
            width="half"
          />
          <Field name="state" label="State" optional width="half" />
        </fieldset>
        <FirstRates />
        <fieldset className={css['part']}>
          <legend>You, the owner</legend>
          <Field name="ownerName" label="Your name" required autoComplete="name" width="half" />
          <Field
            name="signInName"
            label="Name to sign in with"
            hint="Short, in small letters, such as wren."
            required
            autoComplete="username"
            width="half"
          />
          <Field
            name="password"
            label="Password"
            kind="password"
            hint="At least 12 characters; three or four words are easy to keep."
            required
            autoComplete="new-password"
            width="half"
          />
        </fieldset>
        <SubmitButton size="counter" pendingText="Setting up…">
          Open the gallery
        </SubmitButton>
      </FormFrame>
    </Outside>
  );
}
