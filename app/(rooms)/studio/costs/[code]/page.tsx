import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Money } from '@/app/ui/figures/money';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findCost, type CostSheet } from '@/lib/studio/reads/costs/sheet';
import { costRefusalMessage, leftOf } from '@/lib/studio/rules/costs/cost';
import { techniqueWords } from '@/lib/studio/rules/routes';
import { formatSize } from '@/lib/units/rules';
import { RatesMissing } from '../rates-missing';
import { handsWords } from '../words';
import { CostLines, HowReckoned, WaysToSell } from './cost-parts';

export const metadata: Metadata = { title: 'What it costs' };

type CostPageProps = Readonly<{ params: Promise<{ code: string }> }>;

/** What one piece costs, line by line, and what its price leaves by each way of selling it. */
export default async function CostPage({ params }: CostPageProps) {
  const actor = await requireActor('stock.value');
  const { timeZone, lengthUnit } = await getGallery();
  const { code } = await params;
  const found = await findCost(actor, decodeURIComponent(code), dayOf(now(), timeZone));
  if (!found) notFound();
  const { sheet, studio } = found;
  return (
    <>
      <PageHead
        title={sheet.title}
        work
        back={{ href: '/studio/costs', name: 'What a piece costs' }}
        lead={`${formatSize(sheet, lengthUnit)}, ${sheet.colourway}, ${sheet.code}: ${techniqueWords[sheet.technique]}.`}
      />
      <InThisRoom room="studio" here="costs" roles={actor.roles} />
      <RatesMissing studio={studio} />
      {sheet.cost.ok ? (
        <>
          <Columns
            wide={
              <Section title="One good piece" lead={leadOf(sheet)}>
                <CostLines cost={sheet.cost.value} />
              </Section>
            }
            beside={<Beside sheet={sheet} />}
          />
          <WaysToSell priceCents={sheet.priceCents} costCents={sheet.cost.value.totalCents} />
          <HowReckoned sheet={sheet} />
        </>
      ) : (
        <Notice kind="caution">{costRefusalMessage(sheet.cost.refusal)}</Notice>
      )}
      <p>
        <Link href={`/stock/${sheet.code}`}>To the piece in the stock room</Link>
      </p>
    </>
  );
}

function leadOf({ cost, priceCents }: CostSheet): string {
  if (!cost.ok) return '';
  const { totalCents } = cost.value;
  const left = leftOf(priceCents, totalCents);
  const price = formatCents(priceCents);
  if (left.cents < 0n) return `It costs more than its price of ${price}.`;
  return `${formatCents(totalCents)} of its price of ${price}; ${left.percent} of a hundred are left.`;
}

function Beside({ sheet }: Readonly<{ sheet: CostSheet }>) {
  const { cost, earned, sold, keptCents } = sheet;
  if (!cost.ok) return null;
  const { minuteHundredths, borneMinuteHundredths, goodHundredths } = cost.value;
  const turn = earned?.centsPerTurn ?? null;
  const hour = earned?.centsPerHour ?? null;
  return (
    <Facts
      facts={[
        {
          name: 'A turn of the kiln brings',
          value: turn === null ? null : <Money cents={turn} size="strong" />,
        },
        {
          name: 'An hour of hands brings',
          value: hour === null ? null : <Money cents={hour} size="strong" />,
        },
        { name: 'Hands at one', value: handsWords(minuteHundredths) },
        { name: 'With those that are lost', value: handsWords(borneMinuteHundredths) },
        { name: 'Come out good', value: `${Math.round(goodHundredths / 100)} of 100` },
        {
          name: 'Sold in the last year',
          value: sold ? `${sold.pieces}, for ${formatCents(sold.averageCents)} on average` : null,
          notKnown: 'none',
        },
        {
          name: 'Cost kept in the catalogue',
          value: keptCents === null ? null : <Money cents={keptCents} />,
          notKnown: 'none',
        },
      ]}
    />
  );
}
