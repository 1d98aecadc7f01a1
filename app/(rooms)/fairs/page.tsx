import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listFairs, type FairListed } from '@/lib/fairs/reads';

export const metadata: Metadata = { title: 'Fairs' };

/** The fairs: those that are open first, what stands there, what was sold. */
export default async function FairsPage() {
  const actor = await requireActor('outside.keep');
  const fairs = await listFairs(actor);
  return (
    <>
      <PageHead title="Fairs" lead="What goes along, what it costs there, what it earned.">
        <ButtonLink href="/fairs/new" size="counter">
          Write a fair down
        </ButtonLink>
      </PageHead>
      <InThisRoom room="stock" here="fairs" roles={actor.roles} />
      {fairs.length === 0 ? (
        <Empty title="No fair yet" act={<ButtonLink href="/fairs/new">Write one down</ButtonLink>}>
          Write a fair down with its days and its town. It gets a place of its own, so that what is
          in the van is not for sale at home.
        </Empty>
      ) : (
        <FairTable fairs={fairs} />
      )}
    </>
  );
}

function FairTable({ fairs }: Readonly<{ fairs: readonly FairListed[] }>) {
  return (
    <Table
      caption="Fairs, the latest first"
      captionHeardOnly
      columns={[
        { name: 'Fair' },
        { name: 'Days' },
        { name: 'Town', wideOnly: true },
        { name: 'Where it is' },
        { name: 'Sold before tax', figure: true },
      ]}
      rows={fairs.map((fair) => ({
        key: fair.id,
        cells: [
          <Link key="name" href={`/fairs/${fair.number}`}>
            {fair.name}
          </Link>,
          <DaysText key="days" fair={fair} />,
          fair.town === '' ? 'not known yet' : fair.town,
          whereItIs(fair),
          <Money key="sold" cents={fair.soldCents} />,
        ],
      }))}
    />
  );
}

function DaysText({ fair }: Readonly<{ fair: FairListed }>) {
  if (fair.fromOn === fair.untilOn) return <DayText day={fair.fromOn} />;
  return (
    <>
      <DayText day={fair.fromOn} /> to <DayText day={fair.untilOn} />
    </>
  );
}

function whereItIs({ closedAt, standing }: FairListed): string {
  if (closedAt) return 'counted back in';
  if (standing === 0) return 'nothing taken yet';
  return `${standing} ${standing === 1 ? 'piece stands' : 'pieces stand'} there`;
}
