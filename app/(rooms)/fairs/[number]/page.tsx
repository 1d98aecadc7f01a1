import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import type { Fair, FairSheet } from '@/lib/fairs/reads';
import { hoursText } from '@/lib/fairs/rules';
import { Earned } from './earned';
import { readFairOfAddress, type FairAddress } from './read-fair';
import { TakeTable } from './take-table';

export const metadata: Metadata = { title: 'A fair' };

/** One fair: its take list, what it costs there, what it earned. */
export default async function FairPage({ params }: FairAddress) {
  const actor = await requireActor('outside.keep');
  const sheet = await readFairOfAddress(actor, params);
  const { fair, list } = sheet;
  return (
    <>
      <PageHead
        title={fair.name}
        back={{ href: '/fairs', name: 'Fairs' }}
        lead={<Days {...fair} />}
      >
        <Acts sheet={sheet} />
      </PageHead>
      <FairFacts fair={fair} />
      <Section
        title="The take list"
        act={
          list.length > 0 ? (
            <ButtonLink href={`/fairs/${fair.number}/list`} variant="quiet">
              Print it
            </ButtonLink>
          ) : null
        }
      >
        <TakeTable sheet={sheet} />
      </Section>
      <Earned sheet={sheet} />
    </>
  );
}

function Days({ fromOn, untilOn, town }: Fair) {
  const where = town === '' ? '' : `, ${town}`;
  if (fromOn === untilOn) {
    return (
      <p>
        <DayText day={fromOn} style="long" />
        {where}
      </p>
    );
  }
  return (
    <p>
      <DayText day={fromOn} /> to <DayText day={untilOn} />
      {where}
    </p>
  );
}

function Acts({ sheet: { fair, list } }: Readonly<{ sheet: FairSheet }>) {
  const here = `/fairs/${fair.number}`;
  const change = (
    <ButtonLink href={`${here}/change`} variant="quiet" size="counter">
      Days, costs and hours
    </ButtonLink>
  );
  if (fair.closedAt) return change;
  const stands = list.some((piece) => piece.there > 0);
  return (
    <>
      <ButtonLink href={`${here}/take`} size="counter" variant={stands ? 'quiet' : 'main'}>
        Take pieces along
      </ButtonLink>
      <ButtonLink href={`${here}/count`} size="counter" variant={stands ? 'main' : 'quiet'}>
        Count back in
      </ButtonLink>
      {change}
    </>
  );
}

function FairFacts({ fair }: Readonly<{ fair: Fair }>) {
  const { taxPlace, feeCents, travelCents, otherCents, minutes, note, closedAt } = fair;
  return (
    <>
      {closedAt ? (
        <Notice kind="done">It is counted back in, and nothing stands there any more.</Notice>
      ) : null}
      <Facts
        facts={[
          { name: 'Sales tax of', value: taxPlace },
          { name: 'Fee', value: <Money cents={feeCents} /> },
          { name: 'Travel', value: <Money cents={travelCents} /> },
          { name: 'Other', value: <Money cents={otherCents} /> },
          { name: 'Hours', value: minutes === 0 ? null : hoursText(minutes) },
          ...(note === '' ? [] : [{ name: 'Note', value: note }]),
        ]}
      />
    </>
  );
}
