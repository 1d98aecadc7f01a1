import { formatDay, type Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** What a designer gets: something off the price, or a fee for who they bring; never both. */
export const tradeWays = ['discount', 'referral_fee'] as const;

/** One of the two ways. */
export type TradeWay = (typeof tradeWays)[number];

/** The ways as they are said. */
export const tradeWayWords: Record<TradeWay, string> = {
  discount: 'a trade discount',
  referral_fee: 'a referral fee',
};

/** What one designer gets, from a day on; `percent` is a decimal above 0 and below 100. */
export type TradeTerms = Readonly<{
  way: TradeWay;
  percent: string;
  sinceOn: Day;
  note: string;
}>;

/** A resale certificate as it was handed in; `untilOn` is its last day, null when it has none. */
export type Certificate = Readonly<{
  id: string;
  state: string;
  permitNumber: string;
  legalName: string;
  fromOn: Day;
  untilOn: Day | null;
  isWithdrawn: boolean;
}>;

/** How somebody's certificates stand for one state on one day. */
export type CertificateStanding =
  | { kind: 'good'; certificate: Certificate }
  | { kind: 'not_yet'; state: string; fromOn: Day }
  | { kind: 'ran_out'; state: string; untilOn: Day }
  | { kind: 'withdrawn'; state: string }
  | { kind: 'other_state'; state: string; goodFor: string[] }
  | { kind: 'none' };

/**
 * Whether there is a certificate on file that is good for a state on a day; it must be the state
 * that the pieces are handed over in or sent to.
 *
 * @returns the one that lasts longest, or the nearest reason why there is none
 * @source Streamlined Sales and Use Tax Agreement, section 317; from memory
 * @example the last day of a certificate is a day on which it is good
 */
export function certificateStanding(
  certificates: readonly Certificate[],
  state: string,
  on: Day,
): CertificateStanding {
  const here = certificates.filter((each) => isSameState(each.state, state));
  const kept = here.filter((each) => !each.isWithdrawn);
  const good = longestLasting(kept.filter((each) => isGoodOn(each, on)));
  if (good) return { kind: 'good', certificate: good };

  const ranOut = kept.flatMap(({ untilOn }) => (untilOn !== null && untilOn < on ? [untilOn] : []));
  const lastOn = ranOut.toSorted().at(-1);
  if (lastOn !== undefined) return { kind: 'ran_out', state, untilOn: lastOn };
  const [nextOn] = kept.map(({ fromOn }) => fromOn).toSorted();
  if (nextOn !== undefined) return { kind: 'not_yet', state, fromOn: nextOn };
  if (here.length > 0) return { kind: 'withdrawn', state };

  const elsewhere = certificates.filter((each) => !each.isWithdrawn && isGoodOn(each, on));
  const goodFor = [...new Set(elsewhere.map((each) => each.state))].toSorted();
  return goodFor.length > 0 ? { kind: 'other_state', state, goodFor } : { kind: 'none' };
}

/** Says how the certificates stand, as the counter wants to hear it. */
export function certificateWords(standing: CertificateStanding): string {
  switch (standing.kind) {
    case 'good': {
      const { state, untilOn } = standing.certificate;
      const ends =
        untilOn === null ? 'does not run out' : `runs out ${formatDay(untilOn, 'short')}`;
      return `On file, good for ${state}, ${ends}.`;
    }
    case 'not_yet':
      return `The certificate for ${standing.state} holds from ${formatDay(standing.fromOn, 'short')}. Until then tax is charged.`;
    case 'ran_out':
      return `The certificate for ${standing.state} ran out on ${formatDay(standing.untilOn, 'short')}. Tax is charged until there is a new one.`;
    case 'withdrawn':
      return `The certificate for ${standing.state} was withdrawn. Tax is charged.`;
    case 'other_state':
      return `Their certificate is good for ${standing.goodFor.join(' and ')}, not for ${standing.state}. Tax is charged.`;
    case 'none':
      return 'No resale certificate is on file. Tax is charged.';
  }
}

/**
 * Why a sale under a certificate is not taxed, as the receipt and the tax sheet say it.
 *
 * @example 'For resale: certificate 4471 of Halloran & Vane, Alderland'
 */
export function exemptWords(certificate: Certificate): string {
  const { permitNumber, legalName, state } = certificate;
  return `For resale: certificate ${permitNumber} of ${legalName}, ${state}`;
}

/**
 * What comes off for a designer: only when the designer is the buyer named on the sale.
 *
 * @param terms null for somebody who has none
 * @returns the percentage; refuses `not_the_buyer` when the sale is written to somebody else, then
 *   `no_trade_discount` for one who has no terms, gets a fee instead, or not yet
 */
export function tradeDiscount(
  terms: TradeTerms | null,
  sale: { buyerId: string | null; designerId: string; on: Day },
): Result<string, { code: 'not_the_buyer' } | { code: 'no_trade_discount' }> {
  if (sale.buyerId !== sale.designerId) return refuse({ code: 'not_the_buyer' });
  const holds = terms?.way === 'discount' && terms.sinceOn <= sale.on;
  return holds ? ok(terms.percent) : refuse({ code: 'no_trade_discount' });
}

/**
 * The certificate with the same permit in the same state that holds on one of the new one's days.
 *
 * @returns undefined when there is none, or it was withdrawn
 */
export function overlapping(
  certificates: readonly Certificate[],
  asked: Pick<Certificate, 'state' | 'permitNumber' | 'fromOn' | 'untilOn'>,
): Certificate | undefined {
  return certificates.find(
    (each) =>
      !each.isWithdrawn &&
      isSameState(each.state, asked.state) &&
      each.permitNumber === asked.permitNumber &&
      (asked.untilOn === null || each.fromOn <= asked.untilOn) &&
      (each.untilOn === null || asked.fromOn <= each.untilOn),
  );
}

/** Whether two ways of writing a state mean the same one; capitals and spaces do not count. */
export function isSameState(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}

function isGoodOn({ fromOn, untilOn }: Certificate, on: Day): boolean {
  return fromOn <= on && (untilOn === null || on <= untilOn);
}

function longestLasting(certificates: readonly Certificate[]): Certificate | undefined {
  const lasts = ({ untilOn }: Certificate) => untilOn ?? '9999-12-31';
  return certificates.toSorted((a, b) => (lasts(a) < lasts(b) ? 1 : -1))[0];
}
