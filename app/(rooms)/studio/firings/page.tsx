import type { Metadata } from 'next';
import Link from 'next/link';
import { z } from 'zod';
import { ButtonLink } from '@/app/ui/button/button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Views } from '@/app/ui/page/views';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { firingNumberInput } from '@/lib/studio/input/firings';
import { firingsOnPage, listFirings, type FiringInLog } from '@/lib/studio/reads/firings/list';
import { listKilns } from '@/lib/studio/reads/kilns/kiln';
import { firingKindWords } from '@/lib/studio/rules/firings/schedule';
import { cameWords, standWords } from './firing-words';

export const metadata: Metadata = { title: 'The log of firings' };

type LogProps = Readonly<{
  searchParams: Promise<{ kiln?: string | string[]; before?: string | string[] }>;
}>;

/** Every firing, the last first: what it was, how full, how it came out, what it cost. */
export default async function FiringLog({ searchParams }: LogProps) {
  const actor = await requireActor('studio.see');
  const asked = await searchParams;
  const kilnId = z.uuid().safeParse(asked.kiln).data;
  const before = firingNumberInput.safeParse(asked.before).data;
  const { timeZone } = await getGallery();
  const [rows, kilns] = await Promise.all([
    listFirings(actor, { kilnId, before }),
    listKilns(actor, dayOf(now(), timeZone)),
  ]);
  const firings = rows.slice(0, firingsOnPage);
  const last = rows.length > firingsOnPage ? firings.at(-1)?.number : undefined;
  const ofKiln = kilnId === undefined ? '' : `kiln=${kilnId}&`;
  return (
    <>
      <PageHead
        title="The log of firings"
        back={{ href: '/studio/kilns', name: 'Kilns' }}
        lead="Years later it answers what was done, and how hot."
      >
        {isAllowed(actor.roles, 'studio.move') ? (
          <ButtonLink href="/studio/firings/new" size="counter">
            Plan a firing
          </ButtonLink>
        ) : null}
      </PageHead>
      <InThisRoom room="studio" here="kilns" roles={actor.roles} />
      {kilns.length > 1 ? (
        <Views
          label="Which kiln"
          views={[
            { href: '/studio/firings', name: 'All kilns', current: kilnId === undefined },
            ...kilns.map((kiln) => ({
              href: `/studio/firings?kiln=${kiln.id}`,
              name: kiln.name,
              current: kiln.id === kilnId,
            })),
          ]}
        />
      ) : null}
      {firings.length === 0 ? (
        <Empty title="No firing is in the log yet">
          A firing stands here from the moment it is planned.
        </Empty>
      ) : (
        <LogTable firings={firings} maySeeCost={isAllowed(actor.roles, 'stock.value')} />
      )}
      {last === undefined ? null : (
        <ButtonLink href={`/studio/firings?${ofKiln}before=${last}`} variant="quiet">
          Earlier ones
        </ButtonLink>
      )}
    </>
  );
}

type LogTableProps = Readonly<{ firings: readonly FiringInLog[]; maySeeCost: boolean }>;

function LogTable({ firings, maySeeCost }: LogTableProps) {
  return (
    <Table
      caption="Firings, the last first"
      captionHeardOnly
      columns={[
        { name: 'Firing' },
        { name: 'Day' },
        { name: 'Kiln', wideOnly: true },
        { name: 'What' },
        { name: 'Pieces', figure: true },
        { name: 'Of the room', figure: true, wideOnly: true },
        { name: 'How it came out' },
        ...(maySeeCost ? [{ name: 'Cost', figure: true, wideOnly: true }] : []),
      ]}
      rows={firings.map((firing) => ({
        key: firing.id,
        cells: [
          <Link key="number" href={`/studio/firings/${firing.number}`}>
            {firing.number}
          </Link>,
          formatDay(firing.on, 'short'),
          firing.kiln,
          `${firingKindWords[firing.kind]}, cone ${firing.cone}${firing.isPlanned ? '' : ', unplanned'}`,
          firing.pieces,
          `${firing.volumePercent}%`,
          firing.stand === 'opened' ? cameWords(firing.came) : standWords[firing.stand],
          ...(maySeeCost
            ? [firing.costCents === null ? '' : <Money key="cost" cents={firing.costCents} />]
            : []),
        ],
      }))}
    />
  );
}
