import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Caution } from '@/app/ui/page/caution';
import { SpotPicture } from '@/app/ui/spots/spot-picture';
import { roundFor, shownForCollector } from '@/lib/commissions/reads/colours/for-collector';
import type { ShownWhole } from '@/lib/commissions/reads/colours/shown';
import { openPage, type TokenParams } from '../../../open-page';
import { Kept } from '../../../parts/kept';
import { TheirAct } from '../../../parts/their-act';
import { ChangesForm } from './changes-form';
import { YesForm } from './yes-form';
import css from '../../../page.module.css';

export const metadata: Metadata = { title: 'To look at' };

type ShownProps = Readonly<{ params: TokenParams & Promise<{ shownId: string }> }>;

/** A sketch or a colour tile, large, with the collector's yes or what should be otherwise. */
export default async function ShownPage({ params }: ShownProps) {
  const page = await openPage(params);
  const { shownId } = await params;
  const { link, token } = page;
  const all = await shownForCollector(link.commissionId);
  const shown = all.find(({ id }) => id === shownId);
  if (!shown) notFound();
  const picture = { ...shown.picture, src: `/c/${token}/picture/${shown.fileId}` };
  const isTile = shown.what === 'colour_tile';
  const rounds = isTile ? null : await roundFor(link.commissionId, shown.label);
  return (
    <TheirAct
      page={page}
      title={isTile ? `Colour tile ${shown.label}` : `Sketch ${shown.label}`}
      lead={shown.sketch ? shown.sketch.note : shown.tile.glazes}
    >
      <SpotPicture picture={picture} spots={spotsOf(shown)} label="Marked in the picture" />
      <p className={css['ways']}>
        <a href={picture.src}>The picture alone, as large as it is</a>
      </p>
      {isTile ? (
        <Caution>
          A screen shows no glaze as it is. What counts is the fired tile in your hand, looked at by
          daylight.
        </Caution>
      ) : null}
      {shown.yes ? (
        <Kept
          said="Your yes is kept"
          by={shown.yes.approvedBy}
          on={shown.yes.approvedOn}
          sha256={shown.contentSha256}
          next="The studio goes on from it. Whatever changes now is a change order."
        />
      ) : (
        <>
          <YesForm page={page} shown={shown} />
          <ChangesForm {...{ page, shown, picture, rounds }} />
        </>
      )}
    </TheirAct>
  );
}

function spotsOf({ sketch, changes }: ShownWhole) {
  const areas = (sketch?.areas ?? []).map(({ name, ...spot }) => ({ ...spot, words: name }));
  return [...areas, ...changes.flatMap(({ spots }) => spots)];
}
