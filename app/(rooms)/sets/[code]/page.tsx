import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { findSet, type SetShown } from '@/lib/catalogue/reads/sets';
import { maySplitWords } from '@/lib/catalogue/rules/sets';
import { dayOf } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { end } from '../actions';
import { SetForm } from '../set-form';

export const metadata: Metadata = { title: 'A set' };

type SetPageProps = Readonly<{ params: Promise<{ code: string }> }>;

/** One set: its pieces, what they cost together and one by one, and whether it may be split. */
export default async function SetPage({ params }: SetPageProps) {
  const actor = await requireActor('stock.see');
  const { timeZone } = await getGallery();
  const set = await findSet(actor, (await params).code, dayOf(now(), timeZone));
  if (!set) notFound();
  const whole = set.priceCents ?? set.singleCents;
  const here = set.whole === 1 ? 'One whole set is here' : `${set.whole} whole sets are here`;
  return (
    <>
      <PageHead
        title={set.title}
        work
        back={{ href: '/sets', name: 'Sets' }}
        lead={`${formatCents(whole)} as a set, ${set.code}. ${here}; ${maySplitWords[set.maySplit]}.`}
      />
      {set.note === '' ? null : <p>{set.note}</p>}
      <Pieces set={set} whole={whole} />
      {isAllowed(actor.roles, 'catalogue.keep') ? <Changes set={set} /> : null}
    </>
  );
}

function Pieces({ set, whole }: Readonly<{ set: SetShown; whole: bigint }>) {
  return (
    <Table
      caption="The pieces of the set"
      columns={[
        { name: 'Piece' },
        { name: 'In the set', figure: true },
        { name: 'Free here', figure: true },
        { name: 'One by one', figure: true },
      ]}
      rows={set.members.map((each) => ({
        key: each.skuId,
        cells: [
          <span key="piece">
            <Link href={`/stock/${each.code}`} className="work-title">
              {each.title}
            </Link>
            , {each.colourway} · {each.code}
          </span>,
          `${each.quantity}`,
          `${each.free}`,
          <Money key="price" cents={each.priceCents * BigInt(each.quantity)} />,
        ],
      }))}
      foot={[
        whole < set.singleCents
          ? `As a set ${formatCents(whole)}, ${formatCents(set.singleCents - whole)} less`
          : 'Together',
        '',
        '',
        <Money key="single" cents={set.singleCents} />,
      ]}
    />
  );
}

function Changes({ set }: Readonly<{ set: SetShown }>) {
  return (
    <Section title="Change it">
      <details>
        <summary>Change its pieces or its price</summary>
        <SetForm set={set} />
      </details>
      <FormFrame action={end} label="No longer offer it">
        <RequestKey />
        <input type="hidden" name="setId" value={set.setId} />
        <SubmitButton variant="quiet">No longer offer it</SubmitButton>
      </FormFrame>
    </Section>
  );
}
