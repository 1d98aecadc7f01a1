import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { findSignedIn, requireActor } from '@/lib/access/reads';
import { listOwnSessions } from '@/lib/access/reads/staff';
import { roleWords } from '@/lib/access/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { choosePassword } from '../actions';
import { Browsers } from '../browsers';

export const metadata: Metadata = { title: 'You' };

/** One's own password, and the browsers one is signed in with. */
export default async function You() {
  const actor = await requireActor('self.keep');
  const [sessions, { timeZone }, here] = await Promise.all([
    listOwnSessions(actor, now()),
    getGallery(),
    findSignedIn(),
  ]);
  const parts = actor.roles.map((role) => roleWords[role]);
  return (
    <>
      <PageHead
        title={actor.name}
        lead={parts.map(({ name, does }) => `${name}: ${does}.`).join(' ')}
      />
      <Columns
        wide={
          <Section
            title="Your browsers"
            lead="One that you did not use for twelve hours is signed out by itself."
          >
            <Browsers sessions={sessions} zone={timeZone} hereId={here?.sessionId} />
            <p>
              <ButtonLink href="/sign-out" variant="quiet">
                Sign out, here or everywhere
              </ButtonLink>
            </p>
          </Section>
        }
        beside={
          <Section title="Your password" lead="Your other browsers are signed out by it.">
            <FormFrame action={choosePassword} label="Your password">
              <RequestKey />
              <Field
                name="currentPassword"
                label="The password you have now"
                kind="password"
                autoComplete="current-password"
                required
              />
              <Field
                name="password"
                label="The new one"
                kind="password"
                hint="At least 12 characters; three or four words are easy to keep."
                autoComplete="new-password"
                required
              />
              <SubmitButton>Change it</SubmitButton>
            </FormFrame>
          </Section>
        }
      />
    </>
  );
}
