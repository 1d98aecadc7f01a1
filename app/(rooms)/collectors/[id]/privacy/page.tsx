import type { Metadata } from 'next';
import { notFound, redirect } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getCollector } from '@/lib/collectors/reads';
import { listOpen } from '@/lib/collectors/reads/still-open/page';
import { openSentence, type OpenThing } from '@/lib/collectors/rules/erase';
import { now } from '@/lib/platform/clock';
import css from '../../collectors.module.css';
import { strikeOut } from './actions';
import { WhatStays } from './what-stays';

export const metadata: Metadata = { title: 'What is kept of them' };

type PrivacyPageProps = Readonly<{ params: Promise<{ id: string }> }>;

/** What is kept of somebody: handed out to them, or struck out at their request. */
export default async function PrivacyPage({ params }: PrivacyPageProps) {
  const actor = await requireActor('collectors.erase');
  const { id } = await params;
  const collector = await getCollector(actor, id);
  if (!collector) notFound();
  if (collector.id !== id) redirect(`/collectors/${collector.id}/privacy`);
  if (collector.erasedAt) redirect(`/collectors/${id}`);
  const open = await listOpen(actor, id, now());
  const { name } = collector;
  return (
    <>
      <PageHead
        title="What is kept of them"
        lead={name}
        back={{ href: `/collectors/${id}`, name }}
      />
      <Section
        title="Hand it out"
        lead="When they ask what is kept of them: everything, under every entry of theirs, in one file. That it was handed out is written down."
      >
        <div className={css['acts']}>
          <ButtonLink href={`/collectors/${id}/export?as=page`} download>
            To read and print
          </ButtonLink>
          <ButtonLink href={`/collectors/${id}/export`} variant="quiet" download>
            As a file for a machine
          </ButtonLink>
        </div>
      </Section>
      <Section title="Strike it out" lead="When they ask to be forgotten. It cannot be undone.">
        <WhatStays />
        {open.length > 0 ? <StillOpen open={open} /> : <StrikeOut {...{ id, name }} />}
      </Section>
    </>
  );
}

function StillOpen({ open }: Readonly<{ open: readonly OpenThing[] }>) {
  return (
    <Notice kind="caution" title="Not while something is open">
      <ul>
        {open.map((each) => (
          <li key={each.kind}>{openSentence(each)}</li>
        ))}
      </ul>
    </Notice>
  );
}

function StrikeOut({ id, name }: Readonly<{ id: string; name: string }>) {
  return (
    <FormFrame action={strikeOut} label="Strike out what is known of them">
      <RequestKey />
      <input type="hidden" name="collectorId" value={id} />
      <Field
        name="typed"
        label={`Type their name: ${name}`}
        width="half"
        autoComplete="off"
        required
      />
      <SubmitButton variant="danger">Strike out what is known of them</SubmitButton>
    </FormFrame>
  );
}
