import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { dayOf, formatDay, type Day } from '@/lib/dates/rules';
import { listGlazes, type GlazeShown } from '@/lib/glazes/reads/book';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import css from './glazes.module.css';
import { Looks } from './looks';

export const metadata: Metadata = { title: 'Glaze book' };

/** The glaze book: how each glaze looks raw and fired, its cone and coats, and whether it is for food. */
export default async function GlazeBook() {
  const actor = await requireActor('studio.see');
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  const glazes = await listGlazes(actor, today);
  const mixed = glazes.filter((glaze) => !hasEnded(glaze, today));
  const ended = glazes.filter((glaze) => hasEnded(glaze, today));
  const act = isAllowed(actor.roles, 'studio.keep') ? (
    <ButtonLink href="/studio/glazes/new">Write a glaze down</ButtonLink>
  ) : null;
  return (
    <>
      <PageHead
        title="Glaze book"
        lead="A raw glaze is not the colour it fires to: each hangs here both ways."
      >
        {glazes.length === 0 ? null : act}
      </PageHead>
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      {glazes.length === 0 ? (
        <Empty title="The book is empty" act={act}>
          Write the first glaze down: its recipe, its cone, how many coats, and a picture of it raw
          and fired.
        </Empty>
      ) : (
        <Glazes glazes={mixed} />
      )}
      {ended.length > 0 ? (
        <Section title="No longer mixed">
          <Glazes glazes={ended} />
        </Section>
      ) : null}
      <Caution>
        nothing is for food before a laboratory’s leach test of this recipe, on this clay, from this
        firing says so.
      </Caution>
    </>
  );
}

function hasEnded({ endedOn }: GlazeShown, today: Day): boolean {
  return endedOn !== null && endedOn <= today;
}

function Glazes({ glazes }: Readonly<{ glazes: readonly GlazeShown[] }>) {
  return (
    <ul className={css['book']}>
      {glazes.map((glaze) => (
        <li key={glaze.id} className={css['glaze']}>
          <Looks name={glaze.name} raw={glaze.raw} fired={glaze.fired} />
          <div>
            <h3 className={css['name']}>
              <Link href={`/studio/glazes/${glaze.id}`}>{glaze.name}</Link>
            </h3>
            <p className={css['facts']}>{factsOf(glaze)}</p>
            <p className={css['food']} data-use={glaze.food.use}>
              {glaze.food.words}
            </p>
          </div>
        </li>
      ))}
    </ul>
  );
}

function factsOf({ cone, coats, recipes, tiles, endedOn }: GlazeShown): string {
  const version = recipes[0] ? `recipe ${recipes[0].version}` : 'no recipe yet';
  const tested = tiles === 1 ? '1 test tile' : `${tiles} test tiles`;
  const said = [`cone ${cone}`, coats === 1 ? '1 coat' : `${coats} coats`, version, tested];
  if (endedOn !== null) said.push(`mixed until ${formatDay(endedOn, 'short')}`);
  return said.join(' · ');
}
