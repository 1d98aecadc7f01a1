import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { z } from 'zod';
import { Columns, Section } from '@/app/ui/page/section';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { findStaff } from '@/lib/access/reads/staff';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { Browsers } from '../browsers';
import { LetBackForm, PasswordForm, RolesForm, StopForm } from './person-forms';

export const metadata: Metadata = { title: 'Staff' };

type PersonProps = Readonly<{ params: Promise<{ id: string }> }>;

/** One person who works here: their part, their password, their browsers, their access. */
export default async function Person({ params }: PersonProps) {
  const actor = await requireActor('staff.keep');
  const id = z.uuid().safeParse((await params).id);
  const person = id.success ? await findStaff(actor, id.data, now()) : null;
  if (!person) notFound();
  const { timeZone } = await getGallery();
  const isSelf = person.id === actor.id;
  return (
    <>
      <PageHead
        title={person.name}
        back={{ href: '/staff', name: 'Staff' }}
        lead={person.active ? `Signs in as “${person.signInName}”.` : 'No longer works here.'}
      />
      <Columns
        wide={
          <>
            <Section title="Part" lead="Counts from their next step on.">
              <RolesForm staffId={person.id} held={person.roles} />
            </Section>
            <Section
              title="Signed in"
              lead="A browser that nobody used for twelve hours is signed out by itself."
            >
              <Browsers sessions={person.sessions} zone={timeZone} mayEnd />
            </Section>
          </>
        }
        beside={
          <>
            <Section title="New password">
              {isSelf ? (
                <p>
                  <Link href="/staff/you">Choose your own password</Link>
                </p>
              ) : (
                <PasswordForm staffId={person.id} />
              )}
            </Section>
            <Section title="Access">
              {person.active ? (
                <StopForm staffId={person.id} name={person.name} />
              ) : (
                <LetBackForm staffId={person.id} name={person.name} />
              )}
            </Section>
          </>
        }
      />
    </>
  );
}
