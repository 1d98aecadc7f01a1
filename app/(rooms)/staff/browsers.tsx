import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { OpenSession } from '@/lib/access/reads/staff';
import { signBrowserOut } from './actions';
import css from './staff.module.css';

type BrowsersProps = Readonly<{
  sessions: readonly OpenSession[];
  zone: string;
  /** Whether each can be signed out from here. */
  mayEnd?: boolean | undefined;
  /** The browser that this page is seen in. */
  hereId?: string | undefined;
}>;

/** The browsers in which someone is signed in, the latest used first. */
export function Browsers({ sessions, zone, mayEnd, hereId }: BrowsersProps) {
  if (sessions.length === 0) return <p>In no browser at the moment.</p>;
  return (
    <ul className={css['browsers']}>
      {sessions.map((session) => (
        <li key={session.id} className={css['browser']}>
          <div>
            <strong>{session.device || 'An unknown browser'}</strong>
            {session.id === hereId ? ', the one you are looking at' : ''}
            <p className={css['when']}>
              since <InstantText at={session.openedAt} zone={zone} />, last used{' '}
              <InstantText at={session.seenAt} zone={zone} />
            </p>
          </div>
          {mayEnd ? <EndForm sessionId={session.id} /> : null}
        </li>
      ))}
    </ul>
  );
}

function EndForm({ sessionId }: Readonly<{ sessionId: string }>) {
  return (
    <FormFrame action={signBrowserOut} label="Sign this browser out">
      <RequestKey />
      <input type="hidden" name="sessionId" value={sessionId} />
      <SubmitButton variant="quiet">Sign out</SubmitButton>
    </FormFrame>
  );
}
