import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { readCommissionTax } from '@/lib/commissions/reads/agreement/tax';
import { acceptedProposal, type ProposalShown } from '@/lib/commissions/reads/proposal/facts';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import {
  agreementBody,
  type AgreementSaid,
  type ApprovedThing,
} from '@/lib/commissions/rules/agreement/paper';
import {
  depositOf,
  splitPlan,
  type PlanStep,
  type PlanWish,
} from '@/lib/commissions/rules/proposal/plan';
import { sha256Of } from '@/lib/commissions/reads/content';
import type { Day } from '@/lib/dates/rules';
import { currencyNamed, type Cents } from '@/lib/money/rules';
import { getGallery } from '@/lib/platform/settings';

/** An agreement as it is to be signed: its words, their hash, and what would be written with it. */
export type AgreementPaper = {
  proposal: ProposalShown;
  said: AgreementSaid;
  body: string;
  contentSha256: string;
  steps: readonly PlanStep[];
  depositCents: Cents;
  totalCents: Cents;
  taxCautions: readonly string[];
};

/**
 * The agreement to be signed: built from the accepted proposal, the approved sketch and the approved
 * tiles as they are at this moment.
 *
 * @param on the day whose tax rates it names
 * @returns null while no proposal was accepted
 */
export async function readAgreementPaper(
  from: Prisma.TransactionClient,
  commissionId: string,
  on: Day,
): Promise<AgreementPaper | null> {
  const proposal = await acceptedProposal(from, commissionId);
  if (!proposal) return null;
  const gallery = await getGallery(from);
  const terms = await readCommissionTerms(from);
  const lines = proposal.lines.map(({ kind, amountCents: cents }) => ({ kind, cents }));
  const { taxPlaceId, taxAs, priceCents } = proposal;
  const where = { taxPlaceId, on, taxAs, roundBy: gallery.roundTaxBy };
  const tax = await readCommissionTax(from, lines, where);
  const totalCents = priceCents + tax.taxCents;
  const steps = splitPlan(proposal.steps.map(wishOf), totalCents) ?? proposal.steps;
  const said: AgreementSaid = {
    ...proposal,
    ...(await readNames(from, commissionId)),
    ...(await readApproved(from, commissionId)),
    proposalVersion: proposal.version,
    taxWords: `Sales tax of ${proposal.taxPlace}, as it stands today`,
    taxCents: tax.taxCents,
    steps,
    cancelMakingPercent: terms.cancelMakingPercent,
    cancelFinishedPercent: terms.cancelFinishedPercent,
  };
  const { currency, lengthUnit } = gallery;
  const body = agreementBody(said, { currency: currencyNamed(currency), lengthUnit });
  return {
    ...{ proposal, said, body, contentSha256: sha256Of(body), steps, totalCents },
    depositCents: depositOf(steps),
    taxCautions: tax.cautions,
  };
}

function wishOf({ name, event, percent, amountCents }: PlanStep): PlanWish {
  return percent === null
    ? { name, event, percent: null, amountCents }
    : { name, event, percent, amountCents: null };
}

async function readNames(from: Prisma.TransactionClient, id: string) {
  const { number, title, collector } = await from.commission.findUniqueOrThrow({
    where: { id },
    select: { number: true, title: true, collector: { select: { name: true } } },
  });
  return { commissionNumber: number, title, collector: collector.name };
}

async function readApproved(from: Prisma.TransactionClient, commissionId: string) {
  const yes = await from.approval.findMany({
    where: { commissionId },
    select: {
      contentSha256: true,
      sketch: { select: { letter: true } },
      colourTile: { select: { number: true } },
    },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  });
  const sketch = yes.find((each) => each.sketch !== null);
  const tiles = yes
    .flatMap(({ colourTile, contentSha256 }) =>
      colourTile ? [{ number: colourTile.number, contentSha256 }] : [],
    )
    .sort((one, other) => one.number - other.number);
  const of = (label: string, contentSha256: string): ApprovedThing => ({ label, contentSha256 });
  return {
    sketch: sketch?.sketch ? of(sketch.sketch.letter, sketch.contentSha256) : null,
    tiles: tiles.map(({ number, contentSha256 }) => of(String(number), contentSha256)),
  };
}
