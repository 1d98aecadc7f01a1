import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import { findCrewMember } from '@/lib/installation/reads/crew/people';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { weekWords } from '../week-words';
import { Absences } from './absences';
import { HoursForm } from './hours-form';

export const metadata: Metadata = { title: 'When somebody works' };

type MemberPageProps = Readonly<{ params: Promise<{ id: string }> }>;

/** When one of those who work here works, and when they are away. */
export default async function MemberPage({ params }: MemberPageProps) {
  const actor = await requireActor('diary.see');
  const { id } = await params;
  const { timeZone: zone } = await getGallery();
  const member = await findCrewMember(actor, id, { todayOn: dayOf(now(), zone), zone });
  if (!member) notFound();
  return (
    <>
      <PageHead
        title={member.name}
        back={{ href: '/diary/crew', name: 'Who works when' }}
        lead={`Works ${weekWords(member.workDays)}.`}
      />
      <Columns
        wide={<Absences member={member} zone={zone} />}
        beside={isAllowed(actor.roles, 'staff.keep') ? <HoursForm member={member} /> : null}
      />
    </>
  );
}
