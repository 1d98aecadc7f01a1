import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { FindForm } from '@/app/ui/form/find-form';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { lettersOf } from '@/lib/collectors/rules';
import {
  listCommissions,
  listCommissionsOver,
  type CommissionInList,
} from '@/lib/commissions/reads';
import { waitsOnWords } from '@/lib/commissions/rules/course/sentences';
import { groupOrder } from '@/lib/commissions/rules/course/standing';
import { CommissionWall } from './commission-wall';
import css from './commissions.module.css';

export const metadata: Metadata = { title: 'Commissions' };

type CommissionsPageProps = Readonly<{
  searchParams: Promise<{ find?: string | string[]; show?: string | string[] }>;
}>;

/** The commissions, by whom each waits on. */
export default async function CommissionsPage({ searchParams }: CommissionsPageProps) {
  const actor = await requireActor('commissions.see');
  const { find, show } = await searchParams;
  const letters = lettersOf(typeof find === 'string' ? find : '');
  const isOver = letters === '' && show === 'over';
  const listed = isOver ? await listCommissionsOver(actor) : await listCommissions(actor, letters);
  const mayWrite = isAllowed(actor.roles, 'commissions.write');
  const flat = isOver || letters !== '';
  return (
    <>
      <PageHead title="Commissions" lead={leadOf(listed, flat)}>
        {mayWrite ? <ButtonLink href="/commissions/new">Open a commission</ButtonLink> : null}
      </PageHead>
      <div className={css['looking']}>
        <FindForm
          action="/commissions"
          label="Find by collector, title or number"
          letters={letters}
        />
        <Views
          label="Which commissions"
          views={[
            { href: '/commissions', name: 'Going on', current: !flat },
            { href: '/commissions?show=over', name: 'Over', current: isOver },
            { href: '/commissions/in-time', name: 'In time', current: false },
          ]}
        />
      </div>
      {listed.length === 0 ? <NoneHere letters={letters} mayWrite={mayWrite} /> : null}
      {flat ? <CommissionWall commissions={listed} label="Commissions" /> : null}
      {flat
        ? null
        : groupOrder(actor.roles).map((waitsOn) => (
            <Group
              key={waitsOn}
              title={waitsOnWords[waitsOn]}
              commissions={listed.filter((each) => each.waitsOn === waitsOn)}
            />
          ))}
    </>
  );
}

type GroupProps = Readonly<{ title: string; commissions: readonly CommissionInList[] }>;

function Group({ title, commissions }: GroupProps) {
  if (commissions.length === 0) return null;
  return (
    <Section title={title}>
      <CommissionWall commissions={commissions} label={title} />
    </Section>
  );
}

function leadOf(listed: readonly CommissionInList[], flat: boolean): string {
  const many = listed.length === 1 ? 'One commission' : `${listed.length} commissions`;
  if (flat) return `${many}.`;
  if (listed.length === 0) return 'None is going on just now.';
  return `${many} going on, the most overdue first.`;
}

function NoneHere({ letters, mayWrite }: Readonly<{ letters: string; mayWrite: boolean }>) {
  if (letters !== '') {
    return <Empty title={`None is like “${letters}”`}>Fewer letters find more.</Empty>;
  }
  return (
    <Empty
      title="The wall is free"
      act={mayWrite ? <ButtonLink href="/commissions/new">Open a commission</ButtonLink> : null}
    >
      When somebody asks for a relief of their own, it is written down here while they stand there:
      who, where it will hang, what they wish. Everything else may wait.
    </Empty>
  );
}
