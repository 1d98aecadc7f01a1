import type { Metadata } from 'next';
import { ChooseCollector } from '@/app/(rooms)/holds/choose-collector';
import { ChoosePieces } from '@/app/(rooms)/holds/choose-pieces';
import { readChoosing, type ChoosingQuery } from '@/app/(rooms)/holds/choosing';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getCollector } from '@/lib/collectors/reads';
import { addDays, dayOf } from '@/lib/dates/rules';
import { listChosen } from '@/lib/holds/reads/chosen-pieces';
import { writeChosen } from '@/lib/holds/rules/chosen';
import { sumCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findPieces } from '@/lib/stock/reads';
import { GiveForm } from './give-form';

export const metadata: Metadata = { title: 'Give a piece home' };

type NewApprovalProps = Readonly<{ searchParams: Promise<ChoosingQuery> }>;

const base = '/on-approval/new';

/** Gives pieces home to be tried: which, to whom, until when. */
export default async function NewApprovalPage({ searchParams }: NewApprovalProps) {
  const actor = await requireActor('stock.hold');
  const choosing = readChoosing(await searchParams);
  const { counterId: placeId, lengthUnit, timeZone, approvalDays } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const { find, pieces, collectorId, holdId } = choosing;
  const [chosen, found, collector] = await Promise.all([
    listChosen(actor, pieces, { placeId, on: todayOn }),
    find === '' ? [] : findPieces(actor, find),
    collectorId === null ? null : getCollector(actor, collectorId),
  ]);
  const worth = chosen.map(({ priceCents, one }) => priceCents * BigInt(one.quantity));
  return (
    <>
      <PageHead
        title="Give a piece home"
        lead="To be seen on the wall, and bought or brought back."
        back={{ href: '/on-approval', name: 'On approval' }}
      />
      <InThisRoom room="counter" here="approvals" roles={actor.roles} />
      <Section title="Which pieces">
        <ChoosePieces {...{ base, choosing, chosen, found, lengthUnit }} />
      </Section>
      <Section title="To whom">
        <ChooseCollector {...{ actor, base, choosing }} chosen={collector?.name ?? null} />
      </Section>
      {chosen.length > 0 && collector ? (
        <Section title="The slip">
          <GiveForm
            collectorId={collector.id}
            pieces={writeChosen(chosen.map((each) => each.one))}
            holdId={holdId}
            dueOn={addDays(todayOn, approvalDays)}
            valueCents={sumCents(worth)}
          />
        </Section>
      ) : null}
    </>
  );
}
