import { Section } from '@/app/ui/page/section';
import type { Card } from '@/lib/collectors/reads/card';
import type { Day } from '@/lib/dates/rules';
import { Addresses } from './addresses';
import { Consents } from './consents';
import { People } from './people';

type BesideProps = Readonly<{ card: Card; collectorId: string; today: Day; mayWrite: boolean }>;

/** What stands beside somebody's papers: their people, their addresses, and what they allow. */
export function Beside({ card, ...rest }: BesideProps) {
  return (
    <>
      <Section title="Who belongs to it">
        <People people={card.people} {...rest} />
      </Section>
      <Section title="Further addresses">
        <Addresses addresses={card.addresses} {...rest} />
      </Section>
      <Section title="What we may send them">
        <Consents consents={card.consents} {...rest} />
      </Section>
    </>
  );
}
