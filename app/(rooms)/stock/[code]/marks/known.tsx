import { ButtonLink } from '@/app/ui/button/button';
import { isAllowed, type Actor, type Role } from '@/lib/access/rules';
import { findEdition, type EditionSheet } from '@/lib/catalogue/reads/editions';
import type { MouldShown } from '@/lib/catalogue/reads/mould-rows';
import { listMoulds } from '@/lib/catalogue/reads/moulds';
import { findPieceFacts, type PieceFacts } from '@/lib/catalogue/reads/piece-facts';
import { editionNumberWords } from '@/lib/catalogue/rules/edition';
import type { Day } from '@/lib/dates/rules';
import type { Piece } from '@/lib/stock/reads';
import { StateEdition } from './edition';
import { LabelForm } from './label-form';
import { MarkSecond } from './mark-second';

/** What the page of a piece knows beyond its stock. */
export type KnownOfPiece = {
  facts: PieceFacts | null;
  edition: EditionSheet | null;
  /** The moulds of its design, when an edition can still be stated. */
  moulds: readonly MouldShown[] | null;
};

/** Reads what the catalogue knows of a piece. */
export async function readCatalogue(
  actor: Actor,
  piece: Piece,
  todayOn: Day,
): Promise<KnownOfPiece> {
  const [facts, edition] = await Promise.all([
    findPieceFacts(actor, piece.id, todayOn),
    findEdition(actor, piece.id),
  ]);
  const mayState = facts?.hasCome === false && piece.grade === 'first' && edition === null;
  const moulds = mayState ? await listMoulds(actor) : null;
  return {
    facts,
    edition,
    moulds: moulds && moulds.filter((mould) => mould.designId === piece.designId),
  };
}

type ActsProps = Readonly<{ actor: Actor; piece: Piece; known: KnownOfPiece }>;

/** What may be written down of a piece in the catalogue: its label, a flaw, an edition. */
export function CatalogueActs({ actor, piece, known }: ActsProps) {
  if (!isAllowed(actor.roles, 'catalogue.keep') || !known.facts) return null;
  const { edition, moulds, facts } = known;
  const numbers = edition?.places.flatMap(({ numbers: here }) =>
    here.map((number) => ({ value: `${number}`, label: editionNumberWords(number, edition) })),
  );
  return (
    <>
      {piece.grade === 'first' && piece.onHand > 0 ? (
        <MarkSecond skuId={piece.id} priceCents={piece.priceCents} numbers={numbers ?? null} />
      ) : null}
      {moulds ? <StateEdition skuId={piece.id} moulds={moulds} /> : null}
      <LabelForm skuId={piece.id} facts={facts} />
    </>
  );
}

type LinksProps = Readonly<{ piece: Piece; roles: readonly Role[] }>;

/** Where one goes from a piece: have it made, set its price, its papers. */
export function PieceLinks({ piece, roles }: LinksProps) {
  const mayOrder =
    isAllowed(roles, 'orders.take') && piece.grade === 'first' && piece.making === 'open_stock';
  const path = `/stock/${piece.code}`;
  return (
    <p>
      {mayOrder ? (
        <ButtonLink href={`/orders/new?sku=${piece.code}`} variant="quiet">
          Have it made
        </ButtonLink>
      ) : null}{' '}
      {isAllowed(roles, 'catalogue.price') ? (
        <ButtonLink href={`/prices/set?sku=${piece.code}`} variant="quiet">
          Set its price
        </ButtonLink>
      ) : null}{' '}
      <ButtonLink href={`${path}/care/pdf`} variant="quiet">
        How to look after it
      </ButtonLink>{' '}
      <ButtonLink href={`${path}/certificate`} variant="quiet">
        Certificate
      </ButtonLink>
    </p>
  );
}
