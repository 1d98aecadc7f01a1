import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { formatDay } from '@/lib/dates/rules';
import type { GlazeShown } from '@/lib/glazes/reads/book';
import { listTiles } from '@/lib/glazes/reads/tiles';
import { Looks, Swatch } from '../looks';
import { readGlaze, type GlazeParams } from '../read-glaze';
import { doneWords } from '../told';
import { RecipePart } from './recipe-part';
import { TestPart } from './test-part';
import { TilePart } from './tile-part';

export const metadata: Metadata = { title: 'A glaze' };

type GlazePageProps = Readonly<{
  params: GlazeParams;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

/** One glaze: how it looks, its recipe, whether it is for food, and its test tiles. */
export default async function GlazePage({ params, searchParams }: GlazePageProps) {
  const actor = await requireActor('studio.see');
  const { glaze } = await readGlaze(actor, params);
  const tiles = await listTiles(actor, glaze.id);
  const mayKeep = isAllowed(actor.roles, 'studio.keep');
  const { done } = await searchParams;
  const sentence = typeof done === 'string' ? doneWords[done] : undefined;
  return (
    <>
      <PageHead
        title={glaze.name}
        back={{ href: '/studio/glazes', name: 'Glaze book' }}
        lead={leadOf(glaze)}
      >
        {mayKeep ? (
          <ButtonLink href={`/studio/glazes/${glaze.id}/change`} variant="quiet">
            Change it
          </ButtonLink>
        ) : null}
      </PageHead>
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      {sentence ? <Notice kind="done">{sentence}</Notice> : null}
      <Columns
        wide={<Looks name={glaze.name} raw={glaze.raw} fired={glaze.fired} large />}
        beside={
          <Facts
            facts={[
              { name: 'Cone', value: glaze.cone },
              { name: 'Coats', value: `${glaze.coats}` },
              {
                name: 'Colour, measured',
                value: glaze.lab ? <Swatch lab={glaze.lab} /> : null,
                notKnown: 'not measured',
              },
              { name: 'To mind', value: glaze.note || null, notKnown: 'nothing written down' },
            ]}
          />
        }
      />
      <RecipePart glaze={glaze} mayKeep={mayKeep} />
      <TestPart glaze={glaze} mayKeep={mayKeep} />
      <TilePart glaze={glaze} tiles={tiles} mayKeep={mayKeep} />
    </>
  );
}

function leadOf({ food, endedOn }: GlazeShown): string {
  const said = `${food.words.charAt(0).toUpperCase()}${food.words.slice(1)}.`;
  return endedOn === null ? said : `${said} Mixed until ${formatDay(endedOn, 'short')}.`;
}
