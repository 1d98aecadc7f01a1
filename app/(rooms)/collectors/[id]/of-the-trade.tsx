import Link from 'next/link';
import { Section } from '@/app/ui/page/section';
import type { TradePage } from '@/lib/collectors/reads/trade-page';
import type { Day } from '@/lib/dates/rules';
import { Standings } from './trade/certificates';
import { TermsSaid } from './trade/terms';

type OfTheTradeProps = Readonly<{ trade: TradePage; today: Day; href: string; isTrade: boolean }>;

/** Certificate and terms at a glance; only a way there for somebody who has neither. */
export function OfTheTrade({ trade, today, href, isTrade }: OfTheTradeProps) {
  const hasSome = trade.terms !== null || trade.certificates.length > 0;
  if (!hasSome && !isTrade) {
    return (
      <p>
        <Link href={href}>Do they buy for the trade?</Link>
      </p>
    );
  }
  return (
    <Section title="As one of the trade" act={<Link href={href}>Certificates and terms</Link>}>
      <Standings {...trade} today={today} />
      <TermsSaid terms={trade.terms} />
    </Section>
  );
}
