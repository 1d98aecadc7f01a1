import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { InstantText } from '@/app/ui/figures/day-text';
import { Facts } from '@/app/ui/page/facts';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section } from '@/app/ui/page/section';
import { Picture } from '@/app/ui/piece/picture';
import { Wall } from '@/app/ui/piece/piece-hanging';
import { WallLabel } from '@/app/ui/piece/wall-label';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { makingWords } from '@/lib/catalogue/rules/making';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findPieceSheet, type PieceSheet } from '@/lib/stock/reads/stock-room';
import { standingWords } from '@/lib/stock/rules/words';
import { formatSize, formatWeight, type LengthSystem } from '@/lib/units/rules';
import { PieceHung } from '../piece-hung';
import css from '../stock.module.css';
import { CorrectStock } from './correct-stock';
import { HangPicture } from './hang-picture';
import { HeldLines } from './held-lines';
import { History } from './history';
import { CatalogueFacts } from './marks/catalogue-facts';
import { Edition } from './marks/edition';
import { CatalogueActs, PieceLinks, readCatalogue } from './marks/known';

export const metadata: Metadata = { title: 'A piece' };

type PiecePageProps = Readonly<{ params: Promise<{ code: string }> }>;

/** One piece: large on the wall, with its label, where it stands and what happened to it. */
export default async function PiecePage({ params }: PiecePageProps) {
  const actor = await requireActor('stock.see');
  const { code } = await params;
  const [sheet, gallery] = await Promise.all([findPieceSheet(actor, code), getGallery()]);
  if (!sheet) notFound();
  const { piece, story } = sheet;
  const mayLoad = isAllowed(actor.roles, 'stock.load');
  const known = await readCatalogue(actor, piece, dayOf(now(), gallery.timeZone));
  return (
    <>
      <PageHead title={piece.title} work back={{ href: '/stock', name: 'Stock' }} />
      <Columns
        wide={
          <>
            {piece.picture ? <Picture {...piece.picture} first /> : <NoPicture />}
            {story === '' ? null : <p className={css['story']}>{story}</p>}
          </>
        }
        beside={
          <>
            <WallLabel
              title={piece.title}
              what={piece.what}
              size={formatSize(piece, gallery.lengthUnit)}
              code={piece.code}
              priceCents={piece.priceCents}
            />
            <p className={css['counts']}>{standingWords(piece)}</p>
            <PieceFacts sheet={sheet} system={gallery.lengthUnit} timeZone={gallery.timeZone} />
            {known.facts ? <CatalogueFacts facts={known.facts} kind={piece.kind} /> : null}
            <PieceLinks piece={piece} roles={actor.roles} />
            {mayLoad ? <CorrectStock skuId={piece.id} isEdition={known.edition !== null} /> : null}
            <CatalogueActs actor={actor} piece={piece} known={known} />
            {mayLoad ? <HangPicture skuId={piece.id} has={piece.picture !== null} /> : null}
          </>
        }
      />
      {known.edition ? <Edition edition={known.edition} /> : null}
      <HeldLines actor={actor} piece={piece} />
      <Section title="What happened to it">
        <History sheet={sheet} timeZone={gallery.timeZone} />
      </Section>
      <Others sheet={sheet} system={gallery.lengthUnit} />
    </>
  );
}

function NoPicture() {
  return <p className={css['quiet']}>There is no picture of it yet.</p>;
}

type FactsProps = Readonly<{ sheet: PieceSheet; system: LengthSystem; timeZone: string }>;

function PieceFacts({ sheet, system, timeZone }: FactsProps) {
  const { piece, places, lastSoldAt } = sheet;
  const weight = system === 'in' ? 'lb' : 'kg';
  const facts = [
    ...places.map((each) => ({ name: each.place, value: `${each.onHand}` })),
    { name: 'Making', value: makingWords(piece.making) },
    {
      name: 'Weight',
      value: piece.weightG === null ? null : formatWeight(piece.weightG, weight),
      notKnown: 'not weighed yet',
    },
    { name: 'Barcode', value: piece.gtin, notKnown: 'none' },
    {
      name: 'Last sold',
      value: lastSoldAt ? <InstantText at={lastSoldAt} zone={timeZone} /> : null,
      notKnown: 'not sold yet',
    },
  ];
  return <Facts facts={facts} />;
}

function Others({ sheet, system }: Readonly<{ sheet: PieceSheet; system: LengthSystem }>) {
  if (sheet.others.length === 0) return null;
  return (
    <Section title="The same design">
      <Wall label="The same design" spacing="close">
        {sheet.others.map((piece) => (
          <PieceHung key={piece.id} piece={piece} system={system} />
        ))}
      </Wall>
    </Section>
  );
}
