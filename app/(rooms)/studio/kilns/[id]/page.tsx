import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { z } from 'zod';
import { ButtonLink } from '@/app/ui/button/button';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { Facts } from '@/app/ui/page/facts';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { listWaitingFor } from '@/lib/studio/reads/firings/queues';
import { findKiln, type KilnTold } from '@/lib/studio/reads/kilns/kiln';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import { wholeQueue } from '@/lib/studio/rules/firings/queue';
import { degreesWords, type Scale } from '@/lib/studio/rules/kilns/degrees';
import { KilnForm } from '../kiln-form';
import { ageSentence, queueSentence, roomWords, weekSentence } from '../kiln-words';
import { WaitingTable } from '../waiting-table';
import { KilnCare, KilnStandsStill, RetireKiln } from './care';

export const metadata: Metadata = { title: 'A kiln' };

type KilnPageProps = Readonly<{
  params: Promise<{ id: string }>;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

const doneWords: Readonly<Record<string, string>> = {
  kept: 'What is known of this kiln is written down.',
  cared: 'What was done is written down.',
  closed: 'The days are written down.',
  reopened: 'The days are taken back.',
  retired: 'It is out of use. Its log stays.',
  used: 'It is in use again.',
};

/** One kiln: its week and age, what waits for it, what was done to it, and what is known of it. */
export default async function KilnPage({ params, searchParams }: KilnPageProps) {
  const actor = await requireActor('studio.see');
  const id = z.uuid().safeParse((await params).id);
  const [{ timeZone, lengthUnit }, { degrees }] = await Promise.all([
    getGallery(),
    getStudioSettings(),
  ]);
  const todayOn = dayOf(now(), timeZone);
  const kiln = id.success ? await findKiln(actor, id.data, todayOn) : null;
  if (!kiln) notFound();
  const [cones = []] = await listWaitingFor(actor, [kiln], todayOn);
  const mayKeep = isAllowed(actor.roles, 'studio.keep');
  const { done } = await searchParams;
  const said = typeof done === 'string' ? doneWords[done] : undefined;
  return (
    <>
      <PageHead
        title={kiln.name}
        back={{ href: '/studio/kilns', name: 'Kilns' }}
        lead={`${roomWords(kiln, lengthUnit)}.`}
      >
        <ButtonLink href={`/studio/firings?kiln=${kiln.id}`} variant="quiet">
          Its log
        </ButtonLink>
      </PageHead>
      <InThisRoom room="studio" here="kilns" roles={actor.roles} />
      {said ? <Notice kind="done">{said}</Notice> : null}
      <Columns
        wide={
          <>
            <Section title="Its week and its age">
              <p>{weekSentence(kiln)}</p>
              <p>{ageSentence(kiln, todayOn)}</p>
              <p>{queueSentence(wholeQueue(cones, kiln.turnsAWeek), kiln.turnsAWeek)}</p>
            </Section>
            {cones.length > 0 ? (
              <Section title="What waits for it">
                <WaitingTable kiln={kiln.name} cones={cones} todayOn={todayOn} />
              </Section>
            ) : null}
            {mayKeep ? (
              <Section title="What is known of it" id="known">
                <KilnForm kiln={kiln} lengthUnit={lengthUnit} degrees={degrees} />
              </Section>
            ) : (
              <KnownOfIt kiln={kiln} degrees={degrees} />
            )}
          </>
        }
        beside={<Beside kiln={kiln} todayOn={todayOn} mayKeep={mayKeep} />}
      />
    </>
  );
}

type BesideProps = Readonly<{ kiln: KilnTold; todayOn: Day; mayKeep: boolean }>;

function Beside({ kiln, todayOn, mayKeep }: BesideProps) {
  return (
    <>
      <KilnCare kiln={kiln} todayOn={todayOn} mayKeep={mayKeep} />
      <KilnStandsStill kiln={kiln} todayOn={todayOn} mayKeep={mayKeep} />
      {mayKeep ? <RetireKiln kiln={kiln} /> : null}
    </>
  );
}

function KnownOfIt({ kiln, degrees }: Readonly<{ kiln: KilnTold; degrees: Scale }>) {
  return (
    <Section title="What is known of it">
      <Facts
        facts={[
          { name: 'Cones', value: kiln.cones.join(', ') },
          { name: 'Power', value: `${kiln.powerW} W` },
          { name: 'A kWh costs', value: `${kiln.centsPerKwh} cents` },
          { name: 'Wear of each firing', value: formatCents(kiln.wearCents) },
          { name: 'Opened below', value: degreesWords(kiln.openBelowC, degrees) },
          { name: 'Lit when', value: `${kiln.leastFillPercent}% full` },
          { name: 'Or after', value: `${kiln.longestWaitDays} days` },
        ]}
      />
    </Section>
  );
}
