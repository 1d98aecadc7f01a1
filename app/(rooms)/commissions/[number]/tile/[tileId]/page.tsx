import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { Picture } from '@/app/ui/piece/picture';
import { requireActor } from '@/lib/access/reads';
import { listShownWhole } from '@/lib/commissions/reads/colours/studio';
import { ActPage, AboutCommission } from '../../act-page';
import { handTwin, holdAgainst } from '../../changes/actions';
import { readSheet } from '../../read-sheet';
import { TileFacts } from '../../tile-facts';

export const metadata = { title: 'A colour tile' };

type TilePageProps = Readonly<{ params: Promise<{ number: string; tileId: string }> }>;

/** One colour tile: everything on its back, its twin, and the fired parts that were held against it. */
export default async function TilePage({ params }: TilePageProps) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheet(actor, params);
  const { tileId } = await params;
  const shown = (await listShownWhole(actor, sheet.id)).find((each) => each.id === tileId);
  if (shown?.what !== 'colour_tile') notFound();
  const { tile, label, yes } = shown;
  return (
    <ActPage sheet={sheet} title={`Colour tile ${label}`} lead={tile.glazes}>
      <Picture {...shown.picture} first />
      <TileFacts tile={tile} />
      <p>
        <ButtonLink href={`/commissions/${sheet.number}/tile/${shown.id}/pdf`} variant="quiet">
          Cards for both sets
        </ButtonLink>
      </p>
      {tile.given ? null : (
        <Section
          title="Give its twin"
          lead="Only with the tile in their hand can they say yes to it."
        >
          <FormFrame action={handTwin} label="Give its twin">
            <RequestKey />
            <AboutCommission sheet={sheet} />
            <input type="hidden" name="tileId" value={shown.id} />
            <Field name="how" label="How" defaultValue="handed over at the gallery" width="half" />
            <Field
              name="givenOn"
              label="On"
              kind="day"
              width="short"
              defaultValue={sheet.telling.today}
            />
            <SubmitButton>The twin is with them</SubmitButton>
          </FormFrame>
        </Section>
      )}
      {yes ? (
        <Section
          title="Hold a fired part against it"
          lead="With the instrument that measured the tile, under the same light."
        >
          <FormFrame action={holdAgainst} label="Hold a fired part against it">
            <RequestKey />
            <AboutCommission sheet={sheet} />
            <input type="hidden" name="tileId" value={shown.id} />
            <Field name="where" label="Which part" placeholder="Part 14, sky" width="half" />
            <Field name="lab" label="L* a* b* as measured" placeholder="55.9 -7.2 11.0" />
            <Field name="firing" label="Number in the firing log" width="short" optional />
            <SubmitButton>Hold it against the tile</SubmitButton>
          </FormFrame>
        </Section>
      ) : null}
    </ActPage>
  );
}
