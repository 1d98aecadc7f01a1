import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { FeedShown } from '@/lib/installation/reads/calendar/feeds';
import { shutCalendar } from './actions';
import css from './calendar.module.css';

type FeedsMadeProps = Readonly<{ feeds: readonly FeedShown[]; zone: string }>;

/** The addresses of calendars that were made, open ones first. */
export function FeedsMade({ feeds, zone }: FeedsMadeProps) {
  return (
    <Section title="Addresses that were made" id="addresses">
      {feeds.length === 0 ? <p className={css['quiet']}>None was made yet.</p> : null}
      <ul className={css['lines']}>
        {feeds.map((feed) => (
          <OneFeed key={feed.id} feed={feed} zone={zone} />
        ))}
      </ul>
    </Section>
  );
}

function OneFeed({ feed, zone }: Readonly<{ feed: FeedShown; zone: string }>) {
  const { id, staffName, forWhat, madeAt, lastUsedAt, withdrawnAt } = feed;
  const whose = `${staffName}, ${forWhat}`;
  return (
    <li>
      <span>
        <strong>{whose}</strong>: {withdrawnAt ? 'withdrawn' : 'open'}
      </span>
      <span className={css['quiet']}>
        Made <InstantText at={madeAt} zone={zone} />;{' '}
        {lastUsedAt ? (
          <>
            last fetched <InstantText at={lastUsedAt} zone={zone} />
          </>
        ) : (
          'not fetched yet'
        )}
        {withdrawnAt ? (
          <>
            ; withdrawn <InstantText at={withdrawnAt} zone={zone} />
          </>
        ) : null}
      </span>
      {withdrawnAt ? null : (
        <FormFrame action={shutCalendar} label={`Withdraw the address of ${whose}`}>
          <RequestKey />
          <input type="hidden" name="feedId" value={id} />
          <SubmitButton variant="danger">Withdraw it</SubmitButton>
        </FormFrame>
      )}
    </li>
  );
}
