import { feeSentences, sizeSentence, stepSentence } from '@/lib/commissions/rules/proposal/body';
import type { PaperTelling, ProposalTold } from '@/lib/commissions/rules/proposal/body';
import { formatDay, type Day } from '@/lib/dates/rules';
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

/**
 * What to mind where and what is signed; empty for nothing.
 *
 * @source 16 CFR Part 429 for sales made at homes; limits on deposits for work set into a house:
 *   common practice, a lawyer decides
 */
export function signingCautions(
  where: SignedWhere,
  said: {
    readonly taxAs: CommissionTaxAs;
    readonly depositCents: Cents;
    readonly priceCents: Cents;
    readonly hasHanging: boolean;
  },
): string[] {
  const cautions: string[] = [];
  if (where === 'at_their_home') {
    cautions.push(
      'Signed at their home, it can be cancelled for three business days: hand over both papers of the right to cancel, and cut no clay before. Ask a lawyer.',
    );
  }
  const isBuiltIn = said.taxAs !== 'goods_hung';
  if (isBuiltIn) {
    cautions.push(
      'Pieces set into a house may fall under the rules for home improvement: some states limit the deposit, and the setting is a licensed contractor’s, on a paper of its own. Ask a lawyer.',
    );
  }
  if (isBuiltIn && said.depositCents * 10n > said.priceCents) {
    cautions.push('The deposit is more than a tenth of the price: look the limit up first.');
  }
  return cautions;
}
