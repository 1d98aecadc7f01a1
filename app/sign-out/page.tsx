import type { Metadata } from 'next';
import Link from 'next/link';
import { ForgetOnLeaving, KeptSomewhere } from '@/app/(rooms)/diary/[id]/work/kept/kept-somewhere';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { FormFrame } from '@/app/ui/form/form-frame';
import { Outside } from '@/app/ui/page/outside';
import { requireActor } from '@/lib/access/reads';
import { listOwnSessions } from '@/lib/access/reads/staff';
import { now } from '@/lib/platform/clock';
import { leave, leaveEverywhere } from './actions';

export const metadata: Metadata = { title: 'Sign out' };

/** Leaving: this browser, or every browser one is signed in with. */
export default async function SigningOut() {
  const actor = await requireActor('self.keep');
  const elsewhere = (await listOwnSessions(actor, now())).length - 1;
  return (
    <Outside title={`Goodbye, ${actor.name}?`}>
      <KeptSomewhere />
      <ForgetOnLeaving>
        <FormFrame action={leave} label="Sign out of this browser">
          <SubmitButton size="counter" pendingText="Closing the door…">
            Sign out
          </SubmitButton>
        </FormFrame>
        {elsewhere > 0 ? (
          <FormFrame action={leaveEverywhere} label="Sign out everywhere">
            <p>
              You are signed in with {elsewhere} other {elsewhere === 1 ? 'browser' : 'browsers'} as
              well.
            </p>
            <SubmitButton variant="quiet">Sign out everywhere</SubmitButton>
          </FormFrame>
        ) : null}
      </ForgetOnLeaving>
      <p>
        <Link href="/">Stay</Link>
      </p>
    </Outside>
  );
}
