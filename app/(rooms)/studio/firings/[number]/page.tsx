import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { dayOf, formatDay } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { firingNumberInput } from '@/lib/studio/input/firings';
import { findFiring } from '@/lib/studio/reads/firings/find';
import type { FiringTold } from '@/lib/studio/reads/firings/firing';
import { findToLight } from '@/lib/studio/reads/firings/list';
import { listToLayIn } from '@/lib/studio/reads/firings/queues';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import type { Scale } from '@/lib/studio/rules/kilns/degrees';
import { firingKindWords } from '@/lib/studio/rules/firings/schedule';
import { Curve } from '../curve';
import { fillSentence, standWords } from '../firing-words';
import { LoadPicture } from '../load-picture';
import { HowItCame } from './how-it-came';
import { LightIt } from './light-it';
import { LoadLines } from './load-lines';
import { OpenIt } from './open-it';
import { ReadIt } from './read-it';
import { Schedule } from './schedule';
import css from '../firings.module.css';

type FiringPageProps = Readonly<{
  params: Promise<{ number: string }>;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

export async function generateMetadata({ params }: FiringPageProps): Promise<Metadata> {
  return { title: `Firing ${(await params).number}` };
}

const doneWords: Readonly<Record<string, string>> = {
  planned: 'It is planned. Look at the load, change what you like, and light it.',
  laid: 'The load is changed.',
  out: 'They are out of the load.',
  scheduled: 'The schedule is kept.',
  off: 'It is called off. Its pieces are free for other loads.',
  lit: 'It is lit. Write down what it reads now and then.',
  read: 'The reading is written down.',
  opened: 'It is opened, and each piece has gone where it goes.',
};

/** One firing with everything: its load, how it goes, what it read, how it came out. */
export default async function FiringPage({ params, searchParams }: FiringPageProps) {
  const actor = await requireActor('studio.see');
  const number = firingNumberInput.safeParse((await params).number);
  const firing = number.success ? await findFiring(actor, number.data) : null;
  if (!firing) notFound();
  const [{ timeZone: zone, lengthUnit }, { degrees: scale }] = await Promise.all([
    getGallery(),
    getStudioSettings(),
  ]);
  const isPlanned = firing.stand === 'planned' && isAllowed(actor.roles, 'studio.move');
  const [toLayIn, toLight] = isPlanned
    ? await Promise.all([listToLayIn(actor, firing), findToLight(actor, firing)])
    : [[], null];
  const { done } = await searchParams;
  const said = typeof done === 'string' ? doneWords[done] : undefined;
  const shown = { firing, scale, zone };
  return (
    <>
      <PageHead
        title={`Firing ${firing.number}`}
        back={{ href: '/studio/firings', name: 'The log' }}
        lead={leadOf(firing)}
      >
        <ButtonLink href={`/studio/firings/${firing.number}/pdf`} variant="quiet">
          A log sheet to print
        </ButtonLink>
      </PageHead>
      <InThisRoom room="studio" here="kilns" roles={actor.roles} />
      {said ? <Notice kind="done">{said}</Notice> : null}
      <NowInIt {...shown} actor={actor} />
      <Section title="The load" id="load" lead={fillSentence(firing)}>
        {firing.layout.left.length > 0 ? (
          <Notice kind="caution">
            {firing.layout.left.length} of its pieces find no room beside the others, as they are
            measured. Take some out, or lay them yourself and see.
          </Notice>
        ) : null}
        <LoadPicture firing={firing} lengthUnit={lengthUnit} />
        {isPlanned ? <LoadLines firing={firing} toLayIn={toLayIn} lengthUnit={lengthUnit} /> : null}
      </Section>
      <Section title="How it goes" id="schedule">
        <Curve {...shown} />
        <Schedule firing={firing} scale={scale} mayChange={isPlanned} />
      </Section>
      {toLight ? <LightIt firing={firing} toLight={toLight} /> : null}
    </>
  );
}

type NowProps = Readonly<{ firing: FiringTold; scale: Scale; zone: string; actor: Actor }>;

/** What is asked of a kiln that burns or cools, or what came of one that was opened. */
function NowInIt({ firing, scale, zone, actor }: NowProps) {
  const shown = { firing, scale, zone };
  if (firing.stand === 'opened') {
    return <HowItCame {...shown} maySeeCost={isAllowed(actor.roles, 'stock.value')} />;
  }
  if (firing.stand !== 'lit') return null;
  const mayMove = isAllowed(actor.roles, 'studio.move');
  return (
    <>
      {mayMove ? <ReadIt {...shown} todayOn={dayOf(now(), zone)} /> : null}
      <OpenIt {...shown} mayMove={mayMove} />
    </>
  );
}

function leadOf(firing: FiringTold) {
  const { kind, cone, kiln, stand, plannedOn, lit, isPlanned, note } = firing;
  const what = `${firingKindWords[kind]} to cone ${cone} in ${kiln.name}`;
  const on = formatDay(lit?.on ?? plannedOn, 'long');
  const when = lit ? `lit ${on} by ${lit.by}` : `for ${on}`;
  return (
    <>
      {what.charAt(0).toUpperCase() + what.slice(1)}, {standWords[stand]}, {when}
      {isPlanned ? '' : ', unplanned: it holds only what is fired again'}.
      {note ? <span className={css['quiet']}> {note}</span> : null}
    </>
  );
}
