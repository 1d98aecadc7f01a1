import type { ClayBodyKept } from '@/lib/commissions/reads/enquiry/bodies';
import type { RequestTold } from '@/lib/commissions/reads/enquiry/request';
import type { Band } from '@/lib/commissions/rules/enquiry/bands';
import { plainCents } from '@/lib/money/rules';
import { formatLength, type LengthSystem } from '@/lib/units/rules';

/** A request as the form begins with it. */
export type KnownRequest = RequestTold & Readonly<{ title: string }>;

/** What every group of questions is given. */
export type AskingProps = Readonly<{
  /** Null for a request that is only being written down. */
  known: KnownRequest | null;
  lengthUnit: LengthSystem;
  bodies: readonly Pick<ClayBodyKept, 'id' | 'name'>[];
  /** Offered beside free figures; none for those who do not see what things cost. */
  bands: readonly Band[];
  /** What the bands are reckoned for, in words. */
  bandsFor: string;
  /** Whether who brought them can still be settled by whoever looks. */
  maySettleReferral: boolean;
}>;

/** A length as a field takes it, without its unit; empty for what is not known. */
export function lengthText(um: number | null | undefined, unit: LengthSystem): string {
  return um ? formatLength(um, unit).replace(/ (in|mm)$/, '') : '';
}

/** An amount as a field takes it; empty for what is not known. */
export function centsText(amount: bigint | null | undefined): string {
  return typeof amount === 'bigint' ? plainCents(amount) : '';
}
