import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listWaitingFor, listWaitingForNone } from '@/lib/studio/reads/firings/queues';
import { listKilns, type KilnInList } from '@/lib/studio/reads/kilns/kiln';
import { wholeQueue, type ConeWaiting } from '@/lib/studio/rules/firings/queue';
import { EarnedByTurns } from './earned';
import { ageSentence, closedWords, queueSentence, roomWords, weekSentence } from './kiln-words';
import { WaitingTable } from './waiting-table';
import css from './kilns.module.css';

export const metadata: Metadata = { title: 'Kilns' };

/** The kilns: their week, their age, what waits for them in turns, and what a turn earned. */
export default async function KilnsPage() {
  const actor = await requireActor('studio.see');
  const { timeZone, lengthUnit } = await getGallery();
  const todayOn = dayOf(now(), timeZone);
  const kilns = await listKilns(actor, todayOn);
  const inUse = kilns.filter(({ retiredOn }) => retiredOn === null);
  const [waiting, forNone] = await Promise.all([
    listWaitingFor(actor, inUse, todayOn),
    listWaitingForNone(actor, inUse),
  ]);
  const mayMove = isAllowed(actor.roles, 'studio.move');
  const mayKeep = isAllowed(actor.roles, 'studio.keep');
  return (
    <>
      <PageHead title="Kilns" lead="A turn of a kiln is what the studio has least of.">
        {mayMove && inUse.length > 0 ? (
          <ButtonLink href="/studio/firings/new" size="counter">
            Plan a firing
          </ButtonLink>
        ) : null}
        <ButtonLink href="/studio/firings" variant="quiet" size="counter">
          The log of firings
        </ButtonLink>
        {mayKeep ? (
          <ButtonLink href="/studio/kilns/new" variant="quiet" size="counter">
            Another kiln
          </ButtonLink>
        ) : null}
      </PageHead>
      <InThisRoom room="studio" here="kilns" roles={actor.roles} />
      {forNone.length > 0 && inUse.length > 0 ? (
        <Notice kind="caution">
          Pieces wait for cone {[...new Set(forNone.map(({ cone }) => cone))].join(', ')}, and no
          kiln is written down as fired to it. Add the cone to a kiln.
        </Notice>
      ) : null}
      {kilns.length === 0 ? (
        <Empty
          title="No kiln is written down yet"
          act={
            mayKeep ? <ButtonLink href="/studio/kilns/new">Write the first down</ButtonLink> : null
          }
        >
          With its room, its shelves and its plate, loads are laid out, and firings have a cost.
        </Empty>
      ) : null}
      <div className={css['kilns']}>
        {kilns.map((kiln) => (
          <KilnSlab
            key={kiln.id}
            kiln={kiln}
            cones={waiting[inUse.indexOf(kiln)] ?? []}
            todayOn={todayOn}
            unit={lengthUnit}
          />
        ))}
      </div>
      {isAllowed(actor.roles, 'stock.value') ? (
        <Section title="What a turn earned" id="earned">
          <EarnedByTurns actor={actor} />
        </Section>
      ) : null}
    </>
  );
}

type KilnSlabProps = Readonly<{
  kiln: KilnInList;
  cones: readonly ConeWaiting[];
  todayOn: Day;
  unit: 'in' | 'mm';
}>;

function KilnSlab({ kiln, cones, todayOn, unit }: KilnSlabProps) {
  const next = kiln.closed[0];
  return (
    <section className={css['kiln']} aria-label={kiln.name}>
      <h2>
        <Link href={`/studio/kilns/${kiln.id}`}>{kiln.name}</Link>
      </h2>
      <div className={css['said']}>
        <p className={css['quiet']}>{roomWords(kiln, unit)}</p>
        {kiln.retiredOn ? <p>No longer used.</p> : null}
        {kiln.burning ? (
          <p>
            <Link href={`/studio/firings/${kiln.burning.number}`}>
              Firing {kiln.burning.number}
            </Link>
            , cone {kiln.burning.cone}, is in it.
          </p>
        ) : null}
        {kiln.retiredOn ? null : (
          <>
            <p>{weekSentence(kiln)}</p>
            <p>{queueSentence(wholeQueue(cones, kiln.turnsAWeek), kiln.turnsAWeek)}</p>
          </>
        )}
        <p className={kiln.age.left <= 0 ? css['mind'] : css['quiet']}>
          {ageSentence(kiln, todayOn)}
        </p>
        {next ? <p className={css['quiet']}>Stands still {closedWords(next)}</p> : null}
      </div>
      {cones.length > 0 ? <WaitingTable kiln={kiln.name} cones={cones} todayOn={todayOn} /> : null}
    </section>
  );
}
