import type { Metadata } from 'next';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listStatesWatched } from '@/lib/sales/reads/sent-to';
import { OtherState } from './other-state';
import { StateForm } from './state-form';

export const metadata: Metadata = { title: 'Other states' };

/** The states that pieces are sent to: where we collect, and how far the count has come elsewhere. */
export default async function OtherStates() {
  const actor = await requireActor('tax.see');
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  const states = await listStatesWatched(actor, today);
  const mayKeep = isAllowed(actor.roles, 'settings.keep');
  const list =
    states.length === 0 ? (
      <Empty title="No other state is kept yet">
        A state comes here with the first place that is kept in it under Sales tax, or when the
        owner writes it down.
      </Empty>
    ) : (
      states.map((state) => <OtherState key={state.state} {...{ state, today, mayKeep }} />)
    );
  return (
    <>
      <PageHead
        title="Other states"
        lead="What is sent elsewhere is taxed there, from the day on which the gallery must register."
      />
      <InThisRoom room="settings" here="states" roles={actor.roles} />
      {mayKeep ? (
        <Columns
          wide={<div>{list}</div>}
          beside={
            <Section title="Another state">
              <StateForm known={null} today={today} />
            </Section>
          }
        />
      ) : (
        list
      )}
      <Caution>
        thresholds change, and states count in different ways: some count what is not taxed, some
        only what is. Look each up where the state publishes it, and ask a tax adviser before you
        reach it. What is sold in a state in person, such as at a fair, is commonly taxed from the
        first piece on.
      </Caution>
    </>
  );
}
