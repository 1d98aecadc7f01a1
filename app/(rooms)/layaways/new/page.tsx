import type { Metadata } from 'next';
import { ChooseCollector } from '@/app/(rooms)/holds/choose-collector';
import { ChoosePieces } from '@/app/(rooms)/holds/choose-pieces';
import { readChoosing, type ChoosingQuery } from '@/app/(rooms)/holds/choosing';
import css from '@/app/(rooms)/holds/holds.module.css';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getCollector } from '@/lib/collectors/reads';
import { dayOf } from '@/lib/dates/rules';
import { listChosen } from '@/lib/holds/reads/chosen-pieces';
import { writeChosen } from '@/lib/holds/rules/chosen';
import { proposeLayaway } from '@/lib/layaway/reads/proposal';
import { parseCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findPieces } from '@/lib/stock/reads';
import { LayawayForm } from './layaway-form';
import { TakeOff } from './take-off';

export const metadata: Metadata = { title: 'Put a piece away' };

type NewLayawayProps = Readonly<{ searchParams: Promise<ChoosingQuery> }>;

const base = '/layaways/new';

/** Begins a layaway: which pieces, for whom, how it is paid. */
export default async function NewLayawayPage({ searchParams }: NewLayawayProps) {
  const actor = await requireActor('stock.hold');
  const query = await searchParams;
  const choosing = readChoosing(query);
  const gallery = await getGallery();
  const todayOn = dayOf(now(), gallery.timeZone);
  const { find, pieces, collectorId } = choosing;
  const { counterId: placeId, lengthUnit } = gallery;
  const [chosen, found, collector] = await Promise.all([
    listChosen(actor, pieces, { placeId, on: todayOn }),
    find === '' ? [] : findPieces(actor, find),
    collectorId === null ? null : getCollector(actor, collectorId),
  ]);
  const off = takenOff(query);
  const asked = { chosen, gallery, todayOn, discountCents: off.cents };
  const proposal = chosen.length > 0 ? await proposeLayaway(actor, asked) : null;
  return (
    <>
      <PageHead
        title="Put a piece away"
        lead="Kept back for somebody who pays it off in parts."
        back={{ href: '/layaways', name: 'Layaways' }}
      />
      <InThisRoom room="counter" here="layaways" roles={actor.roles} />
      <Section title="Which pieces">
        <ChoosePieces {...{ base, choosing, chosen, found, lengthUnit }} />
        {chosen.length > 0 ? <TakeOff base={base} choosing={choosing} off={off} /> : null}
      </Section>
      <Section title="For whom">
        <ChooseCollector {...{ actor, base, choosing }} chosen={collector?.name ?? null} />
      </Section>
      {proposal && collector ? (
        <Section title="How it is paid">
          <LayawayForm
            proposal={proposal}
            collectorId={collector.id}
            pieces={writeChosen(chosen.map((each) => each.one))}
            holdId={choosing.holdId}
            off={off}
          />
          {gallery.layawayTerms === '' ? null : (
            <p className={css['terms']}>{gallery.layawayTerms}</p>
          )}
        </Section>
      ) : null}
    </>
  );
}

function takenOff(query: ChoosingQuery): { cents: bigint; text: string; reason: string } {
  const text = typeof query['off'] === 'string' ? query['off'].slice(0, 24) : '';
  const reason = typeof query['why'] === 'string' ? query['why'].slice(0, 200) : '';
  const read = parseCents(text);
  return { cents: read.ok ? read.value : 0n, text: read.ok ? text : '', reason };
}
