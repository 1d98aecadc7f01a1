import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Facts } from '@/app/ui/page/facts';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import {
  findTile,
  readTileChoices,
  type FiringNamed,
  type TileShown,
} from '@/lib/glazes/reads/tiles';
import { tellOfTile } from '../../actions';
import { apartWords } from '../../[id]/tile-part';
import { LooksFields } from '../../fields';
import { Looks, Swatch } from '../../looks';
import { FiringField } from '../../tile-fields';
import { doneWords } from '../../told';

export const metadata: Metadata = { title: 'A test tile' };

type TilePageProps = Readonly<{
  params: Promise<{ number: string }>;
  searchParams: Promise<{ done?: string | string[] }>;
}>;

/** One test tile: what is on its back, how it came out, and how far that is from the glaze. */
export default async function TilePage({ params, searchParams }: TilePageProps) {
  const actor = await requireActor('studio.see');
  const { number } = await params;
  const tile = /^[1-9]\d{0,8}$/.test(number) ? await findTile(actor, Number(number)) : null;
  if (!tile) notFound();
  const { firings } = await readTileChoices(actor);
  const { done } = await searchParams;
  const sentence = typeof done === 'string' ? doneWords[done] : undefined;
  return (
    <>
      <PageHead
        title={`Test tile ${tile.number}`}
        back={{ href: `/studio/glazes/${tile.glazeId}`, name: tile.glaze }}
        lead={apartWords(tile)}
      />
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      {sentence ? <Notice kind="done">{sentence}</Notice> : null}
      <Columns
        wide={<Looks name={`Test tile ${tile.number}`} raw={tile.raw} fired={tile.fired} large />}
        beside={<TileFacts tile={tile} />}
      />
      {isAllowed(actor.roles, 'studio.keep') ? <Tell tile={tile} firings={firings} /> : null}
    </>
  );
}

function TileFacts({ tile }: Readonly<{ tile: TileShown }>) {
  return (
    <Facts
      facts={[
        { name: 'Glaze', value: tile.glaze },
        { name: 'Recipe', value: tile.recipeVersion },
        { name: 'Clay body', value: tile.body },
        { name: 'Cone', value: tile.cone },
        { name: 'Coats', value: `${tile.coats}` },
        { name: 'Firing', value: tile.firing?.number ?? null, notKnown: 'none of the log' },
        { name: 'Made', value: <DayText day={tile.madeOn} /> },
        {
          name: 'Colour, measured',
          value: tile.lab ? <Swatch lab={tile.lab} /> : null,
          notKnown: 'not measured',
        },
        {
          name: 'The glaze’s own',
          value: tile.glazeLab ? <Swatch lab={tile.glazeLab} /> : null,
          notKnown: 'not measured',
        },
        { name: 'Found', value: tile.note || null, notKnown: 'nothing yet' },
      ]}
    />
  );
}

function Tell({ tile, firings }: Readonly<{ tile: TileShown; firings: readonly FiringNamed[] }>) {
  return (
    <Section title="What became of it">
      <FormFrame action={tellOfTile} label="What became of it">
        <RequestKey />
        <input type="hidden" name="tileId" value={tile.id} />
        <FiringField
          firings={firings.filter(({ cone }) => cone === tile.cone)}
          chosen={tile.firing?.id ?? ''}
        />
        <LooksFields lab={tile.lab} kept />
        <Field
          name="note"
          label="What was found"
          kind="textarea"
          rows={3}
          defaultValue={tile.note}
          optional
        />
        <SubmitButton size="counter" pendingText="Keeping it…">
          Keep it
        </SubmitButton>
      </FormFrame>
    </Section>
  );
}
