import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listFeedOwners, listFeeds } from '@/lib/installation/reads/calendar/feeds';
import { getGallery } from '@/lib/platform/settings';
import { openCalendar } from './actions';
import { CalendarOnce } from './calendar-once';
import { FeedsMade } from './feeds-made';

export const metadata: Metadata = { title: 'On your phone' };

/** Addresses under which telephones fetch the diary: making and withdrawing them. */
export default async function CalendarPage() {
  const actor = await requireActor('diary.see');
  const [owners, feeds, gallery] = await Promise.all([
    listFeedOwners(actor),
    listFeeds(actor),
    getGallery(),
  ]);
  return (
    <>
      <PageHead
        title="On your phone"
        lead="A calendar that can subscribe to an address shows where you are expected, and keeps up with what is moved or called off."
      />
      <InThisRoom room="diary" here="calendar" roles={actor.roles} />
      <Section title="Make an address">
        <Caution>
          Whoever holds the address sees to whose houses you go, and when. It is shown once and kept
          nowhere: give it to no calendar that others read, and withdraw it when a telephone is
          lost.
        </Caution>
        <FormFrame action={openCalendar} label="Make an address">
          <RequestKey />
          <WhoseField owners={owners} />
          <Field
            name="forWhat"
            label="Where it will be used"
            hint="So that it is known again when it has to be withdrawn."
            placeholder="telephone"
            width="half"
            maxLength={60}
            required
          />
          <SubmitButton>Make the address</SubmitButton>
          <CalendarOnce />
        </FormFrame>
      </Section>
      <FeedsMade feeds={feeds} zone={gallery.timeZone} />
    </>
  );
}

function WhoseField({ owners }: Readonly<{ owners: readonly { id: string; name: string }[] }>) {
  const [first] = owners;
  if (owners.length < 2) return <input type="hidden" name="staffId" value={first?.id ?? ''} />;
  return (
    <Field
      name="staffId"
      label="Whose calendar"
      kind="select"
      width="half"
      options={owners.map(({ id, name }) => ({ value: id, label: name }))}
      defaultValue={first?.id}
      required
    />
  );
}
