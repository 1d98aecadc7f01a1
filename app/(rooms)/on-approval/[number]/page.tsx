import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { readNumber } from '@/app/(rooms)/holds/[number]/read-number';
import css from '@/app/(rooms)/holds/holds.module.css';
import { Phone } from '@/app/(rooms)/holds/phone';
import { ButtonLink } from '@/app/ui/button/button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { Picture } from '@/app/ui/piece/picture';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import type { ApprovalShown } from '@/lib/holds/reads/approval-slips';
import { findApproval } from '@/lib/holds/reads/approvals';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { Due } from '../due';
import { BackForm } from './back-form';

export const metadata: Metadata = { title: 'On approval' };

type ApprovalPageProps = Readonly<{ params: Promise<{ number: string }> }>;

/** One slip: what is out, how it left, and what came back. */
export default async function ApprovalPage({ params }: ApprovalPageProps) {
  const actor = await requireActor('stock.hold');
  const number = readNumber((await params).number);
  const approval = number === null ? null : await findApproval(actor, number);
  if (!approval) notFound();
  const { timeZone: zone } = await getGallery();
  const { collector } = approval;
  return (
    <>
      <PageHead
        title={`On approval, slip ${approval.number}`}
        lead={
          <>
            At <Link href={`/collectors/${collector.id}`}>{collector.name}</Link>’s,{' '}
            <Due approval={approval} todayOn={dayOf(now(), zone)} />
          </>
        }
        back={{ href: '/on-approval', name: 'On approval' }}
      >
        <ButtonLink
          href={`/on-approval/${approval.number}/pdf`}
          variant="quiet"
          size="counter"
          download
        >
          Print the slip
        </ButtonLink>
      </PageHead>
      <InThisRoom room="counter" here="approvals" roles={actor.roles} />
      <Columns
        wide={
          <>
            <Lines approval={approval} />
            <Pictures approval={approval} isBack={false} title="As it left" />
            <Pictures approval={approval} isBack title="As it came back" />
          </>
        }
        beside={
          <div className={css['all']}>
            <SlipFacts approval={approval} zone={zone} />
            <Phone number={collector.phone} />
            {approval.endedAt === null ? <BackForm approval={approval} /> : null}
          </div>
        }
      />
    </>
  );
}

function Lines({ approval }: Readonly<{ approval: ApprovalShown }>) {
  return (
    <Section title="Pieces">
      {approval.lines.map((line) => (
        <div key={line.position} className={css['chosen']}>
          <span className={css['words']}>
            <span className={css['title']}>
              <Link href={`/stock/${line.code}`}>{line.title}</Link>
            </span>
            <span className={css['quiet']}>
              {line.code}
              {line.editionNumber === null ? '' : ` · number ${line.editionNumber}`}
            </span>
          </span>
          <span>{outWords(line)}</span>
        </div>
      ))}
    </Section>
  );
}

function outWords({ quantity, out }: ApprovalShown['lines'][number]): string {
  if (out === quantity) return quantity === 1 ? 'out' : `${quantity} out`;
  return out === 0 ? 'not out any more' : `${out} of ${quantity} still out`;
}

function SlipFacts({ approval, zone }: Readonly<{ approval: ApprovalShown; zone: string }>) {
  const { valueCents, condition, security, staffName, at, backs } = approval;
  return (
    <Facts
      facts={[
        { name: 'Worth', value: <Money cents={valueCents} /> },
        { name: 'Left', value: <InstantText at={at} zone={zone} /> },
        { name: 'Given by', value: staffName },
        { name: 'How it was', value: condition || null, notKnown: 'without a flaw' },
        { name: 'Secured by', value: security || null, notKnown: 'nothing' },
        ...backs.map((back, which) => ({
          name: which === 0 ? 'Since then' : `And then, ${which + 1}`,
          value: (
            <>
              {back.pieces} {back.bought ? 'bought' : 'back'},{' '}
              <InstantText at={back.at} zone={zone} />
              {back.condition === '' ? '' : `: ${back.condition}`}
            </>
          ),
        })),
      ]}
    />
  );
}

type PicturesProps = Readonly<{ approval: ApprovalShown; isBack: boolean; title: string }>;

function Pictures({ approval, isBack, title }: PicturesProps) {
  const pictures = approval.pictures.filter((picture) => picture.isBack === isBack);
  if (pictures.length === 0) return null;
  return (
    <Section title={title}>
      <div className={css['pictures']}>
        {pictures.map(({ src, width, height }) => (
          <Picture key={src} src={src} width={width} height={height} alt={title} />
        ))}
      </div>
    </Section>
  );
}
