import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FindForm } from '@/app/ui/form/find-form';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section, Slab } from '@/app/ui/page/section';
import { textOf, type Query } from '@/app/(rooms)/stock/places/ready/address';
import { requireActor } from '@/lib/access/reads';
import { findCollectors } from '@/lib/collectors/reads';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { begin } from '../actions';
import { TermsFields } from '../terms-form';

export const metadata: Metadata = { title: 'Begin with a gallery' };

/** How many businesses are offered at once. */
const offeredMost = 12;

type NewPageProps = Readonly<{ searchParams: Promise<Query> }>;

/** Begins with another gallery: who it is, their share, when they pay. */
export default async function NewGalleryPage({ searchParams }: NewPageProps) {
  const actor = await requireActor('outside.keep');
  const letters = textOf(await searchParams, 'find').slice(0, 60);
  const [found, { timeZone }] = await Promise.all([findCollectors(actor, letters), getGallery()]);
  const businesses = found.filter((each) => each.kind === 'business').slice(0, offeredMost);
  return (
    <>
      <PageHead
        title="Begin with a gallery"
        back={{ href: '/galleries', name: 'Other galleries' }}
        lead="They get a place of their own, where our pieces stand until they are sold or back."
      />
      <InThisRoom room="stock" here="galleries" roles={actor.roles} />
      <FindForm
        action="/galleries/new"
        label="Look for them in the address book"
        letters={letters}
      />
      {businesses.length === 0 ? (
        <Section title="Nobody found">
          <p>
            No business by that name is in the address book. Add them there first, as a business.
          </p>
          <p>
            <ButtonLink href="/collectors/new" variant="quiet">
              Add them to the address book
            </ButtonLink>
          </p>
        </Section>
      ) : (
        <Slab>
          <FormFrame action={begin} label="Begin with a gallery">
            <RequestKey />
            <Choice
              name="collectorId"
              legend="Who it is"
              layout="down"
              options={businesses.map(({ id, name, city }) => ({
                value: id,
                label: name,
                hint: city ?? undefined,
              }))}
              defaultValue={businesses.length === 1 ? businesses[0]?.id : undefined}
            />
            <Field
              name="sinceOn"
              label="Since"
              kind="day"
              width="short"
              defaultValue={dayOf(now(), timeZone)}
              required
            />
            <TermsFields sharePercent="50" payDays="30" terms="" />
            <SubmitButton>Begin</SubmitButton>
          </FormFrame>
        </Slab>
      )}
    </>
  );
}
