import { notFound } from 'next/navigation';
import {
  readCertificateAddress,
  type CertificateAddress,
  type Query,
} from '@/app/ui/certificate/certificate-address';
import type { Actor } from '@/lib/access/rules';
import { findEdition, type EditionSheet } from '@/lib/catalogue/reads/editions';
import { findPieceFacts, type PieceFacts } from '@/lib/catalogue/reads/piece-facts';
import { dayOf, type Day } from '@/lib/dates/rules';
import type { CertificateField } from '@/lib/documents/input/certificate';
import type { HowMany } from '@/lib/documents/rules/goes-with/certificate';
import { now } from '@/lib/platform/clock';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { findPieceSheet } from '@/lib/stock/reads/stock-room';
import type { Piece } from '@/lib/stock/reads';
import { formatSize, formatWeight } from '@/lib/units/rules';

/** A piece of the stock with what its certificate asks for. */
export type CertifiedPiece = {
  piece: Piece;
  edition: EditionSheet | null;
  /** The numbers that can be certified: those that stand here or were sold. */
  numbers: readonly number[];
  /** How many there are of it; null while the number of an edition is not chosen. */
  many: HowMany | null;
  address: CertificateAddress;
  gallery: Gallery;
  today: Day;
};

/** Reads a piece by its SKU, and the address of its certificate. */
export async function readCertifiedPiece(
  actor: Actor,
  code: string,
  query: Query,
): Promise<CertifiedPiece> {
  const [sheet, gallery] = await Promise.all([findPieceSheet(actor, code), getGallery()]);
  if (!sheet) notFound();
  const { piece } = sheet;
  const today = dayOf(now(), gallery.timeZone);
  const [facts, edition] = await Promise.all([
    findPieceFacts(actor, piece.id, today),
    findEdition(actor, piece.id),
  ]);
  const address = readCertificateAddress(query, knownOf(piece, facts, gallery));
  const numbers = (edition?.places.flatMap((place) => place.numbers) ?? [])
    .concat(edition?.sold ?? [])
    .toSorted((one, other) => one - other);
  const many = howMany(piece, { edition, numbers, chosen: address.asked?.number ?? null });
  return { piece, edition, numbers, many, address, gallery, today };
}

function knownOf(
  piece: Piece,
  facts: PieceFacts | null,
  { name, lengthUnit }: Gallery,
): Record<CertificateField, string> {
  const { title, weightG } = piece;
  return {
    title,
    artist: name,
    year: facts?.madeInYear ? String(facts.madeInYear) : '',
    medium: facts?.medium ?? '',
    size: formatSize(piece, lengthUnit),
    weight: weightG === null ? '' : formatWeight(weightG, lengthUnit === 'in' ? 'lb' : 'kg'),
    owner: '',
  };
}

type Chosen = {
  edition: EditionSheet | null;
  numbers: readonly number[];
  chosen: number | null;
};

function howMany({ making }: Piece, { edition, numbers, chosen }: Chosen): HowMany | null {
  if (edition) {
    const isThere = chosen !== null && numbers.includes(chosen);
    return isThere ? { kind: 'edition', number: chosen, edition } : null;
  }
  return making === 'one_off' ? { kind: 'one' } : { kind: 'open' };
}
