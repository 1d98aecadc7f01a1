import type { Metadata } from 'next';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { getCollector } from '@/lib/collectors/reads';
import { dayOf } from '@/lib/dates/rules';
import { listChosen } from '@/lib/holds/reads/chosen-pieces';
import { untilByDefault } from '@/lib/holds/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findPieces } from '@/lib/stock/reads';
import { ChooseCollector } from '../choose-collector';
import { ChoosePieces } from '../choose-pieces';
import { readChoosing, type ChoosingQuery } from '../choosing';
import { untilFields } from '../until-fields';
import { HoldForm } from './hold-form';
import { WaitForm } from './wait-form';

export const metadata: Metadata = { title: 'Hold a piece' };

type NewHoldProps = Readonly<{ searchParams: Promise<ChoosingQuery> }>;

const base = '/holds/new';

/** Holds one piece for somebody, or puts them down as waiting for it. */
export default async function NewHoldPage({ searchParams }: NewHoldProps) {
  const actor = await requireActor('stock.hold');
  const read = readChoosing(await searchParams);
  const choosing = { ...read, pieces: read.pieces.slice(-1) };
  const at = now();
  const { timeZone, holdHours, counterId, lengthUnit } = await getGallery();
  const on = dayOf(at, timeZone);
  const { find, pieces, collectorId } = choosing;
  const [chosen, found, collector] = await Promise.all([
    listChosen(actor, pieces, { placeId: counterId, on }),
    find === '' ? [] : findPieces(actor, find),
    collectorId === null ? null : getCollector(actor, collectorId),
  ]);
  const [piece] = chosen;
  return (
    <>
      <PageHead
        title="Hold a piece"
        lead="Kept back by name until a day and an hour, without money."
        back={{ href: '/holds', name: 'Holds' }}
      />
      <InThisRoom room="counter" here="holds" roles={actor.roles} />
      <Section title="Which piece">
        <ChoosePieces
          {...{ base, choosing, chosen, found, lengthUnit }}
          another="Another piece instead"
        />
      </Section>
      {piece ? (
        <>
          <Section
            title="In the address book"
            lead="Leave it out for somebody who gives a name only."
          >
            <ChooseCollector {...{ actor, base, choosing }} chosen={collector?.name ?? null} />
          </Section>
          {piece.free > 0 ? (
            <Section title="Hold it" lead={`${piece.free} free here.`}>
              <HoldForm
                {...{ piece, collector, placeId: counterId }}
                until={untilFields(untilByDefault(at, holdHours), timeZone)}
              />
            </Section>
          ) : null}
          <Section
            title={piece.free > 0 ? 'Or they wait' : 'It is not free: they can wait'}
            lead="Second in line is called when the hold before ends; the others when it is back."
          >
            <WaitForm piece={piece} collector={collector} />
          </Section>
        </>
      ) : null}
    </>
  );
}
