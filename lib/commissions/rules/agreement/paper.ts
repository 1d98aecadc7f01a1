import { feeSentences, sizeSentence, stepSentence } from '@/lib/commissions/rules/proposal/body';
import type { PaperTelling, ProposalTold } from '@/lib/commissions/rules/proposal/body';
import { addDays, formatDay, type Day } from '@/lib/dates/rules';
import { cancelUntil } from '@/lib/dates/rules/business-days';
import { formatCents, type Cents } from '@/lib/money/rules';
import { taxWayWords, type CommissionTaxAs } from './tax';

/** Where an agreement can be signed. */
export const signedPlaces = [
  'gallery',
  'by_mail',
  'on_their_page',
  'at_their_home',
  'elsewhere',
] as const;

/** One of the {@link signedPlaces}. */
export type SignedWhere = (typeof signedPlaces)[number];

/** The places as they are said. */
export const signedPlaceWords: Record<SignedWhere, string> = {
  gallery: 'at the gallery',
  by_mail: 'by mail',
  on_their_page: 'on their own page',
  at_their_home: 'at the collector’s home',
  elsewhere: 'somewhere else',
};

/** The places of an agreement that is signed before the gallery, or on a paper of its own. */
export const staffPlaces = ['gallery', 'by_mail', 'at_their_home', 'elsewhere'] as const;

/**
 * The first day on which clay may be cut, where a right to cancel runs from the signing on.
 *
 * @returns null where none runs
 * @source 16 CFR Part 429, for what is signed at the buyer's home
 * @example signed at their home on Monday 2 March 2026: clay from Friday 6 March on
 */
export function clayFrom(where: SignedWhere, signedOn: Day): Day | null {
  return where === 'at_their_home' ? addDays(cancelUntil(signedOn), 1) : null;
}

/** What was approved, by what people call it and the hash of its whole content. */
export type ApprovedThing = { readonly label: string; readonly contentSha256: string };

/** Everything that an agreement says. */
export type AgreementSaid = Omit<ProposalTold, 'version' | 'validUntilOn' | 'understanding'> & {
  readonly proposalVersion: number;
  readonly understanding: string;
  readonly taxAs: CommissionTaxAs;
  readonly sketch: ApprovedThing | null;
  readonly tiles: readonly ApprovedThing[];
  readonly cancelMakingPercent: string;
  readonly cancelFinishedPercent: string;
};

/**
 * An agreement, word for word: what a name under it binds to. The same facts always read the same.
 */
export function agreementBody(said: AgreementSaid, telling: PaperTelling): string {
  const money = (cents: Cents) => formatCents(cents, telling);
  return [
    `Agreement for commission ${said.commissionNumber}: ${said.title}`,
    `Between the gallery and ${said.collector}, by proposal ${said.proposalVersion}.`,
    ...(said.understanding === '' ? [] : [`The work: ${said.understanding}`]),
    `${sizeSentence(said, telling)}. Fired clay moves: the size holds to about two in a hundred.`,
    approvedSentence('Sketch', said.sketch === null ? [] : [said.sketch]),
    approvedSentence('Colour tile', said.tiles),
    ...said.lines.map(({ words, amountCents }) => `${words}: ${money(amountCents)}`),
    `${said.taxWords}: ${money(said.taxCents)}. For the tax it is ${taxWayWords[said.taxAs]}; the rate of the day of the hand-over counts.`,
    ...said.steps.map((step) => stepSentence(step, money)),
    ...feeSentences(said, money),
    promisedSentence(said.readyFromOn, said.readyToOn),
    cancelSentence(said),
    'Changes are signed with their price and their day before anything is done.',
    ...(said.notIncluded === '' ? [] : [`Not included: ${said.notIncluded}`]),
    ...(said.terms === '' ? [] : [`Terms: ${said.terms}`]),
  ].join('\n');
}

function approvedSentence(what: string, approved: readonly ApprovedThing[]): string {
  if (approved.length === 0) {
    return `${what}: to be approved in writing before any clay is cut.`;
  }
  const each = approved.map(({ label, contentSha256 }) => `${label} (${contentSha256})`);
  return `${what}, as approved: ${each.join(', ')}.`;
}

function promisedSentence(fromOn: Day | null, toOn: Day | null): string {
  if (toOn === null) return 'No day is promised.';
  const to = formatDay(toOn, 'long');
  return fromOn === null
    ? `Promised for about ${to}.`
    : `Promised between ${formatDay(fromOn, 'long')} and ${to}.`;
}

function cancelSentence(said: AgreementSaid): string {
  const { cancelMakingPercent, cancelFinishedPercent } = said;
  return (
    `If it ends early, the design fee stays before the making, ${cancelMakingPercent} % of the ` +
    `price while it is made, and ${cancelFinishedPercent} % once it is finished.`
  );
}

/** A handshake agreement: what was agreed on a paper of its own, without a proposal. */
export type HandshakeSaid = {
  readonly commissionNumber: number;
  readonly title: string;
  readonly agreedBy: string;
  readonly agreedOn: Day;
  readonly signedWhere: SignedWhere;
  readonly taxAs: CommissionTaxAs;
  readonly priceCents: Cents;
  readonly depositCents: Cents;
  readonly promisedOn: Day | null;
};

/** What was agreed on a paper of its own, in a sentence each. */
export function handshakeBody(
  said: HandshakeSaid,
  telling: Pick<PaperTelling, 'currency'>,
): string {
  const { signedWhere, agreedOn, promisedOn } = said;
  const money = (cents: Cents) => formatCents(cents, telling);
  const on = formatDay(agreedOn, 'long');
  return [
    `Agreement for commission ${said.commissionNumber}: ${said.title}`,
    `Agreed by ${said.agreedBy} on ${on}, on a paper of its own, ${signedPlaceWords[signedWhere]}.`,
    `Price before tax: ${money(said.priceCents)}. Deposit: ${money(said.depositCents)}.`,
    `For the tax it is ${taxWayWords[said.taxAs]}.`,
    promisedOn === null ? 'No day is promised.' : `Promised for ${formatDay(promisedOn, 'long')}.`,
    ...waitSentences(signedWhere, agreedOn),
  ].join('\n');
}

function waitSentences(where: SignedWhere, signedOn: Day): string[] {
  const from = clayFrom(where, signedOn);
  if (from === null) return [];
  const until = formatDay(cancelUntil(signedOn), 'long');
  return [`It can be cancelled until ${until}; no clay is cut before ${formatDay(from, 'long')}.`];
}
