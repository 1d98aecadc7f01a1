import type { Metadata } from 'next';
import Link from 'next/link';
import css from '@/app/(rooms)/holds/holds.module.css';
import { Phone } from '@/app/(rooms)/holds/phone';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf, type Day } from '@/lib/dates/rules';
import type { ApprovalShown } from '@/lib/holds/reads/approval-slips';
import { approvalsListed, listApprovals } from '@/lib/holds/reads/approvals';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { Due } from './due';

export const metadata: Metadata = { title: 'On approval' };

/** What collectors took home to try: what is due first before the rest. */
export default async function OnApprovalPage() {
  const actor = await requireActor('stock.hold');
  const { timeZone } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const { out, ended } = await listApprovals(actor, todayOn);
  return (
    <>
      <PageHead title="On approval" lead="At a collector’s, to be tried on the wall.">
        <ButtonLink href="/on-approval/new" size="counter">
          Give a piece home
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="approvals" roles={actor.roles} />
      {out.length > 0 ? (
        <Section title="Out">
          <Rows approvals={out} todayOn={todayOn} />
        </Section>
      ) : (
        <Empty
          title="Nothing is out"
          act={
            <ButtonLink href="/on-approval/new" size="counter">
              Give the first piece home
            </ButtonLink>
          }
        >
          A piece that somebody takes home to see on their wall goes with a signed slip: what it is
          worth, how it is, and when it is back. It is neither sold nor here meanwhile.
        </Empty>
      )}
      {ended.length > 0 ? (
        <Section title="Back or bought of late">
          <Rows approvals={ended} todayOn={todayOn} />
        </Section>
      ) : null}
      {out.length >= approvalsListed ? (
        <p className={css['quiet']}>The first {approvalsListed}, by the day they are due.</p>
      ) : null}
    </>
  );
}

type RowsProps = Readonly<{ approvals: readonly ApprovalShown[]; todayOn: Day }>;

function Rows({ approvals, todayOn }: RowsProps) {
  return (
    <ul className={css['rows']}>
      {approvals.map((approval) => (
        <li key={approval.id} className={css['row']}>
          <div className={css['words']}>
            <Link href={`/on-approval/${approval.number}`} className={css['plain']}>
              <span className={css['words']}>
                <span className={css['title']}>{titlesOf(approval)}</span>
                <span className={css['who']}>{approval.collector.name}</span>
              </span>
            </Link>
            <Due approval={approval} todayOn={todayOn} />
            <Phone number={approval.collector.phone} />
          </div>
          <span>
            worth <Money cents={approval.valueCents} />
          </span>
        </li>
      ))}
    </ul>
  );
}

function titlesOf({ lines, endedAt }: ApprovalShown): string {
  return lines
    .filter((line) => endedAt !== null || line.out > 0)
    .map((line) => (line.out > 1 ? `${line.out} × ${line.title}` : line.title))
    .join(', ');
}
