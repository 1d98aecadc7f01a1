import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { listEditions, type EditionShown } from '@/lib/catalogue/reads/editions';
import type { MouldShown } from '@/lib/catalogue/reads/mould-rows';
import { listMoulds } from '@/lib/catalogue/reads/moulds';
import { editionOnMould, mouldKindWords, mouldWarning } from '@/lib/catalogue/rules/moulds';

export const metadata: Metadata = { title: 'Moulds and editions' };

/** The moulds by their casts, and the editions by their numbers. */
export default async function MouldsPage() {
  const actor = await requireActor('stock.see');
  const [moulds, editions] = await Promise.all([listMoulds(actor), listEditions(actor)]);
  const mayKeep = isAllowed(actor.roles, 'catalogue.keep');
  const act = mayKeep ? <ButtonLink href="/moulds/new">Write a mould down</ButtonLink> : null;
  return (
    <>
      <PageHead title="Moulds and editions" lead={leadOf(moulds)}>
        {moulds.length === 0 ? null : act}
      </PageHead>
      <InThisRoom room="stock" here="moulds" roles={actor.roles} />
      <Warnings editions={editions} />
      <Section title="Moulds">
        {moulds.length === 0 ? (
          <Empty title="No mould is written down" act={act}>
            A plaster mould gives only so many sharp casts. Write each one down with the life it is
            trusted for, and note what is cast: then nobody promises what it cannot give.
          </Empty>
        ) : (
          <MouldTable moulds={moulds} />
        )}
      </Section>
      <Section title="Editions">
        {editions.length === 0 ? (
          <Empty title="No edition is stated">
            An edition is stated on the page of its piece, before the first one comes: how many
            there will ever be. It is never raised after.
          </Empty>
        ) : (
          <EditionTable editions={editions} />
        )}
      </Section>
    </>
  );
}

const isWearing: ReadonlySet<MouldShown['wear']> = new Set([
  ...(['wearing', 'softening', 'worn', 'worn_face', 'broken'] as const),
]);

function leadOf(moulds: readonly MouldShown[]): string {
  const wearing = moulds.filter(({ wear }) => isWearing.has(wear));
  if (wearing.length === 0) return 'How many casts each mould has left, and where each number is.';
  const are =
    wearing.length === 1 ? 'One mould is wearing' : `${wearing.length} moulds are wearing`;
  return `${are}: ${wearing.map((mould) => mould.code).join(', ')}.`;
}

function Warnings({ editions }: Readonly<{ editions: readonly EditionShown[] }>) {
  const told = editions.flatMap((edition) => {
    const { code, title, size, artistProofs, came, castsLeft, mouldSaid } = edition;
    if (castsLeft === null) return [];
    const words = editionOnMould({ pieces: size + artistProofs, came }, castsLeft);
    return words === '' ? [] : [{ code, words: `${title} (${code}): ${words} ${mouldSaid}` }];
  });
  return told.map(({ code, words }) => (
    <Notice key={code} kind="caution">
      {words}
    </Notice>
  ));
}

function MouldTable({ moulds }: Readonly<{ moulds: readonly MouldShown[] }>) {
  return (
    <Table
      caption="Moulds"
      captionHeardOnly
      columns={[
        { name: 'Mould' },
        { name: 'Design' },
        { name: 'What it is', wideOnly: true },
        { name: 'Casts so far', figure: true },
        { name: 'Left', figure: true },
        { name: 'Last cast', wideOnly: true },
        { name: 'To mind', wideOnly: true },
      ]}
      rows={moulds.map((mould) => ({
        key: mould.id,
        cells: [
          <Link key="code" href={`/moulds/${mould.code}`}>
            {mould.code}
          </Link>,
          <span key="design" className="work-title">
            {mould.design}
          </span>,
          mouldKindWords[mould.kind].name,
          mould.kind === 'working' ? `${mould.soFar} of ${mould.lifeCasts}` : '',
          mould.kind === 'working' ? `${mould.left}` : '',
          <LastCast key="day" mould={mould} />,
          mouldWarning(mould),
        ],
      }))}
    />
  );
}

function LastCast({ mould }: Readonly<{ mould: MouldShown }>) {
  if (mould.kind !== 'working') return null;
  return mould.lastCastOn === null ? 'not yet' : <DayText day={mould.lastCastOn} />;
}

function EditionTable({ editions }: Readonly<{ editions: readonly EditionShown[] }>) {
  return (
    <Table
      caption="Editions"
      captionHeardOnly
      columns={[
        { name: 'Piece' },
        { name: 'Edition', figure: true },
        { name: 'Have come', figure: true },
        { name: 'Still ours', figure: true },
        { name: 'Mould', wideOnly: true },
        { name: 'Stated', wideOnly: true },
      ]}
      rows={editions.map((edition) => ({
        key: edition.skuId,
        cells: [
          <span key="piece">
            <Link href={`/stock/${edition.code}`} className="work-title">
              {edition.title}
            </Link>{' '}
            · {edition.code}
          </span>,
          edition.artistProofs === 0
            ? `${edition.size}`
            : `${edition.size} + ${edition.artistProofs} AP`,
          `${edition.came}`,
          `${edition.standing}`,
          edition.mould ?? 'none written down',
          <DayText key="stated" day={edition.statedOn} />,
        ],
      }))}
    />
  );
}
