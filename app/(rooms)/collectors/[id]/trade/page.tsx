import Link from 'next/link';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { listFeesOf } from '@/lib/collectors/reads/fees';
import { getTradePage, type TradePage } from '@/lib/collectors/reads/trade-page';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { CertificateForm } from './certificate-form';
import { CertificateList, Standings } from './certificates';
import { Fees } from './fees';
import { TermsForm, TermsSaid } from './terms';

/** The title and the page ask for the same collector; they are read once. */
const findOnce = cache(getTradePage);

type TradePageProps = Readonly<{ params: Promise<{ id: string }> }>;

export async function generateMetadata({ params }: TradePageProps) {
  const actor = await requireActor('tax.see');
  const trade = await findOnce(actor, (await params).id);
  return { title: trade ? `Trade: ${trade.name}` : 'Trade' };
}

/** Resale certificates, what a designer gets, and what they earned by bringing buyers. */
export default async function Trade({ params }: TradePageProps) {
  const actor = await requireActor('tax.see');
  const { id } = await params;
  const trade = await findOnce(actor, id);
  if (!trade) notFound();
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  const fees = await listFeesOf(actor, id, today);
  const mayPay = isAllowed(actor.roles, 'trade.keep');
  const showsFees = fees.fees.length > 0 || trade.terms?.way === 'referral_fee';
  return (
    <>
      <PageHead
        title={trade.name}
        lead="Resale certificates, and what is agreed with them as one of the trade."
        back={{ href: `/collectors/${id}`, name: trade.name }}
      />
      <Columns
        wide={
          <>
            <Certificates
              {...{ trade, today }}
              mayWrite={isAllowed(actor.roles, 'collectors.write')}
            />
            {showsFees ? (
              <Section title="Referral fees" lead="What they earned by bringing buyers.">
                <Fees {...{ fees, today, mayPay }} collectorId={id} />
              </Section>
            ) : null}
          </>
        }
        beside={<Keeping {...{ actor, trade, today, id }} />}
      />
    </>
  );
}

type CertificatesProps = Readonly<{ trade: TradePage; today: Day; mayWrite: boolean }>;

function Certificates({ trade, today, mayWrite }: CertificatesProps) {
  return (
    <Section
      title="Resale certificates"
      lead="A certificate counts in the state in which the pieces are handed over or to which they are sent."
      act={<Link href="/settings/tax">Tax places</Link>}
    >
      <Standings {...trade} today={today} />
      <CertificateList certificates={trade.certificates} {...{ today, mayWrite }} />
    </Section>
  );
}

type KeepingProps = Readonly<{
  actor: Awaited<ReturnType<typeof requireActor>>;
  trade: TradePage;
  today: Day;
  id: string;
}>;

function Keeping({ actor, trade, today, id }: KeepingProps) {
  return (
    <>
      <Section title="What they get">
        <TermsSaid terms={trade.terms} />
        {isAllowed(actor.roles, 'trade.keep') ? (
          <TermsForm terms={trade.terms} {...{ today }} collectorId={id} />
        ) : null}
      </Section>
      {isAllowed(actor.roles, 'collectors.write') ? (
        <Section title="Put a certificate on file">
          <CertificateForm {...{ trade, today }} collectorId={id} />
        </Section>
      ) : null}
    </>
  );
}
