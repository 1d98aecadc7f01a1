import type { KeptSet } from '@/lib/catalogue/rules/sets';
import type { CertificateStanding, TradeTerms } from '@/lib/collectors/rules/trade';
import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import type { PieceForSale } from '@/lib/sales/rules';
import type { RoundBy } from '@/lib/tax/rules';
import type { TaxSetting } from '@/lib/tax/rules/treatment';

/** An open hold, as the counter has to know it. */
export type HoldFact = {
  id: string;
  skuId: string;
  quantity: number;
  editionNumber: number | null;
  forWhom: string;
  collectorId: string | null;
  untilAt: Date | null;
  layawayId: string | null;
};

/** A special order whose deposit is paid or used by a slip. */
export type OrderFact = {
  number: number;
  title: string;
  /** Agreed for one piece, before tax. */
  unitPriceCents: Cents;
  /** What came in as its deposit and was not used yet. */
  heldCents: Cents;
  hasEnded: boolean;
};

/** Papers for which money is taken, by their ids. */
export type PaperFacts = {
  /** Of one that ended early what stays is owed, as after a hand-over. */
  commissions: ReadonlyMap<string, { number: number; title: string; isHandedOver: boolean }>;
  orders: ReadonlyMap<string, OrderFact>;
  layaways: ReadonlyMap<string, { number: number; leftCents: Cents; hasEnded: boolean }>;
};

/** What is true at the moment in which a slip is reckoned, read anew each time. */
export type CounterFacts = {
  askerId: string;
  askedAt: Date;
  on: Day;
  collectorId: string | null;
  pieces: ReadonlyMap<string, PieceForSale>;
  /** Sets on the slip, and those that its pieces belong to. */
  sets: readonly KeptSet[];
  /** Of editions: which numbers stand here, by SKU. */
  numbers: ReadonlyMap<string, readonly number[]>;
  holds: readonly HoldFact[];
  tax: TaxSetting;
  roundTaxBy: RoundBy;
  /** What the collector of the slip gets as a designer. */
  terms: TradeTerms | null;
  /** Who brought the buyer, if the slip says so and somebody knows them. */
  referrer: { id: string; name: string; terms: TradeTerms | null } | null;
  certificate: CertificateStanding;
  /** What staff may take off by themselves, in a hundred. */
  staffPercent: string;
  /** Who may go beyond it: the ids of those who asked, or gave a discount of the slip. */
  mayGoBeyond: ReadonlySet<string>;
  papers: PaperFacts;
};
