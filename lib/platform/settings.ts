import 'server-only';
import { db } from './db/client';
import type { Tx } from './db/transaction';
import { invariant } from './invariant';

/** How this gallery works: what its pages, days, papers and taxes need to know. */
export type Gallery = {
  name: string;
  tagline: string;
  street: string;
  city: string;
  state: string;
  postcode: string;
  phone: string;
  email: string;
  /** IANA name; a day is a plain date in this zone. */
  timeZone: string;
  currency: string;
  lengthUnit: 'in' | 'mm';
  returnTerms: string;
  roundTaxBy: 'invoice' | 'item';
  isDemo: boolean;
  taxPlaceId: string;
  /** The place where counter sales are made from. */
  counterId: string;
  /** What staff may take off by themselves, in a hundred; beyond it the owner. */
  staffDiscountPercent: string;
  /** Days within which a piece may come back. */
  returnDays: number;
  restockingFeePercent: string;
  /** How long a piece is held without money, in hours. */
  holdHours: number;
  layawayDownPercent: string;
  layawayDays: number;
  layawayTerms: string;
  approvalDays: number;
  /** What stays in the drawer overnight. */
  drawerFloatCents: bigint;
  /** What papers are printed on. */
  paperSize: 'letter' | 'a4';
  /** Where the middle of a piece hangs above the floor, in whole micrometres. */
  eyeHeightUm: number;
  /** What fixings must carry, in hundredths of what hangs on them: 300 is three times. */
  hangSafetyPercent: number;
  /** Months between looks at the fixings of heavy work. */
  fixingsLookMonths: number;
};

/** The gallery, or null before the first run is finished. */
export async function findGallery(from: Tx = db()): Promise<Gallery | null> {
  const row = await from.gallery.findUnique({ where: { id: 1 }, omit: { id: true } });
  if (!row) return null;
  return {
    ...row,
    lengthUnit: row.lengthUnit === 'mm' ? 'mm' : 'in',
    roundTaxBy: row.roundTaxBy === 'item' ? 'item' : 'invoice',
    paperSize: row.paperSize === 'a4' ? 'a4' : 'letter',
    staffDiscountPercent: row.staffDiscountPercent.toString(),
    restockingFeePercent: row.restockingFeePercent.toString(),
    layawayDownPercent: row.layawayDownPercent.toString(),
  };
}

/**
 * The gallery, where a page cannot exist without it.
 *
 * @throws Error before the first run is finished
 */
export async function getGallery(from?: Tx): Promise<Gallery> {
  const gallery = await findGallery(from);
  invariant(gallery, 'The gallery is set up before anything else happens.');
  return gallery;
}
