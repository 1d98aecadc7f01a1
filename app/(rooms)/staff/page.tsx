import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { listStaff, type StaffSummary } from '@/lib/access/reads/staff';
import { roleWords } from '@/lib/access/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { AccessTable } from './access-table';

export const metadata: Metadata = { title: 'Staff' };

/** Who works here, what they are, and what each part may do. */
export default async function StaffRoom() {
  const actor = await requireActor('staff.keep');
  const [staff, gallery] = await Promise.all([listStaff(actor, now()), getGallery()]);
  return (
    <>
      <PageHead title="Staff" lead="Who works here, what they are, and what each part may do.">
        <ButtonLink href="/staff/add">Take someone on</ButtonLink>
        <ButtonLink href="/settings" variant="quiet">
          How the gallery works
        </ButtonLink>
      </PageHead>
      <Table
        caption="Who works here"
        captionHeardOnly
        columns={[
          { name: 'Name' },
          { name: 'Signs in as', wideOnly: true },
          { name: 'Part' },
          { name: 'Last here', wideOnly: true },
          { name: 'Signed in' },
        ]}
        rows={staff.map((person) => ({
          key: person.id,
          cells: [
            <Link key="name" href={`/staff/${person.id}`}>
              {person.name}
            </Link>,
            person.signInName,
            partWords(person),
            person.seenAt ? (
              <InstantText key="seen" at={person.seenAt} zone={gallery.timeZone} />
            ) : (
              'never yet'
            ),
            browserWords(person),
          ],
        }))}
      />
      <Section
        title="What each part may do"
        lead="Every page and every button asks this table. Someone with two parts may do what either may."
      >
        <AccessTable />
      </Section>
    </>
  );
}

function partWords(person: StaffSummary): string {
  if (!person.active) return 'no longer works here';
  return person.roles.map((role) => roleWords[role].name).join(', ');
}

function browserWords({ openSessions }: StaffSummary): string {
  if (openSessions === 0) return 'nowhere';
  return openSessions === 1 ? 'in one browser' : `in ${openSessions} browsers`;
}
