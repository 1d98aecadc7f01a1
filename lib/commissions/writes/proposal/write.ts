import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { WriteProposalInput } from '@/lib/commissions/input/proposal/proposal';
import { readCommissionTax } from '@/lib/commissions/reads/agreement/tax';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import type { CommissionTax } from '@/lib/commissions/rules/agreement/tax';
import { proposalBody } from '@/lib/commissions/rules/proposal/body';
import type { BuildUp } from '@/lib/commissions/rules/proposal/build-up';
import { splitPlan, type PlanStep } from '@/lib/commissions/rules/proposal/plan';
import { workOutPrice, type PriceWorkedOut } from '@/lib/commissions/rules/proposal/work-out';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { sha256Of } from '@/lib/commissions/reads/content';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from '@/lib/commissions/writes/carry-out';
import { dateFromDay } from '@/lib/dates/rules';
import { currencyNamed } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A proposal that was kept: its version, and what it comes to before tax, in cents as text. */
export type ProposalWritten = {
  proposalId: string;
  version: number;
  priceCents: string;
  commissionNumber: number;
};

/** A proposal to keep. */
export type ProposalToWrite = Omit<WriteProposalInput, 'requestKey'>;

/**
 * Keeps a proposal as a new version; nothing goes out by it.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, agreed already, a valid-until day that is past, a price that cannot be worked out,
 *   a plan above the whole
 */
export async function writeProposal(
  doer: Doer,
  input: WriteProposalInput,
): Promise<Result<ProposalWritten, AnyRefusal>> {
  const { requestKey, ...proposal } = input;
  const command = {
    name: 'writeProposal',
    permission: 'commissions.propose',
    key: requestKey,
    input: proposal,
  } as const;
  return carryOut(doer, command, (tx) => addProposal(tx, doer, proposal));
}

/** The step of {@link writeProposal}: joins the caller's transaction, asks nobody for leave. */
export async function addProposal(
  tx: Tx,
  doer: Doer,
  proposal: ProposalToWrite,
): Promise<Result<ProposalWritten, CommissionRefusal>> {
  const { commissionId, validUntilOn } = proposal;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const { facts, today, number } = found.value;
  if (facts.agreement) {
    return refuse({ code: 'agreed_already', agreedOn: facts.agreement.agreedOn });
  }
  if (validUntilOn < today) return refuse({ code: 'valid_until_is_past', validUntilOn });
  const { basis } = await readCommissionTerms(tx);
  const worked = workOutPrice(proposal, basis);
  if (!worked) return refuse({ code: 'price_not_worked_out' });
  const tax = await taxOf(tx, found.value, { proposal, worked });
  const steps = splitPlan(proposal.plan, worked.priceCents + tax.taxCents);
  if (!steps) return refuse({ code: 'plan_above_total' });

  const version = facts.proposals.length + 1;
  const kept = { proposal, worked, tax, steps, version };
  const { id } = await keep(tx, doer, found.value, kept);
  const { priceCents } = worked;
  const did = `wrote proposal ${version}`;
  await tellHistory(tx, doer, { commissionId, did, facts: { version, priceCents } });
  return ok({
    ...{ proposalId: id, version, commissionNumber: number },
    priceCents: priceCents.toString(),
  });
}

type Worked = { proposal: ProposalToWrite; worked: PriceWorkedOut };

async function taxOf(tx: Tx, found: FoundCommission, { proposal, worked }: Worked) {
  const lines = worked.lines.map(({ kind, amountCents }) => ({ kind, cents: amountCents }));
  const { taxPlaceId, taxAs } = proposal;
  const { today: on, gallery } = found;
  return readCommissionTax(tx, lines, { taxPlaceId, on, taxAs, roundBy: gallery.roundTaxBy });
}

type Kept = Worked & {
  tax: CommissionTax & { setting: { place: string } };
  steps: readonly PlanStep[];
  version: number;
};

async function keep(tx: Tx, doer: Doer, found: FoundCommission, kept: Kept) {
  const { proposal, worked, version } = kept;
  const body = await bodyOf(tx, found, kept);
  return tx.proposal.create({
    data: {
      ...{ commissionId: found.id, version, body, contentSha256: sha256Of(body) },
      ...{ widthUm: proposal.widthUm, heightUm: proposal.heightUm, depthUm: proposal.depthUm },
      ...{ pieces: proposal.pieces, weightG: worked.weightG },
      understanding: proposal.understanding,
      buildUp: { said: saidOf(proposal), steps: stepsOf(worked.built) },
      areaCents: worked.built.areaCents,
      costCents: worked.built.costCents,
      priceCents: worked.priceCents,
      ...{ taxPlaceId: proposal.taxPlaceId, taxAs: proposal.taxAs },
      designFeeCents: worked.designFeeCents,
      designFeeCredited: proposal.designFeeCredited === 'yes',
      ...{ roundsIncluded: proposal.roundsIncluded, extraRoundCents: proposal.extraRoundCents },
      readyFromOn: proposal.readyFromOn && dateFromDay(proposal.readyFromOn),
      readyToOn: proposal.readyToOn && dateFromDay(proposal.readyToOn),
      validUntilOn: dateFromDay(proposal.validUntilOn),
      ...{ notIncluded: proposal.notIncluded, terms: proposal.terms },
      ...{ writtenById: doer.actor.id, at: doer.at },
      lines: { create: worked.lines.map((line, at) => ({ ...line, position: at + 1 })) },
      steps: { create: [...kept.steps] },
    },
    select: { id: true },
  });
}

async function bodyOf(tx: Tx, found: FoundCommission, kept: Kept): Promise<string> {
  const { proposal, worked, tax, steps, version } = kept;
  const { name: collector } = await tx.collector.findUniqueOrThrow({
    where: { id: found.collectorId },
    select: { name: true },
  });
  const told = {
    ...proposal,
    ...{ commissionNumber: found.number, version, title: found.title, collector },
    ...{ weightG: worked.weightG, lines: worked.lines, steps },
    taxWords: `Sales tax of ${tax.setting.place}, as it stands today`,
    taxCents: tax.taxCents,
    designFeeCents: worked.designFeeCents,
    designFeeCredited: proposal.designFeeCredited === 'yes',
  };
  const { currency, lengthUnit } = found.gallery;
  return proposalBody(told, { currency: currencyNamed(currency), lengthUnit });
}

/** What was said, as text, so that the next version can begin from it. */
function saidOf(proposal: ProposalToWrite): Record<string, string | string[]> {
  const apart = ['plan', 'understanding', 'terms', 'commissionId'];
  return Object.fromEntries(
    Object.entries(proposal)
      .filter(([name, value]) => value !== null && !apart.includes(name))
      .map(([name, value]) => [name, Array.isArray(value) ? value.map(String) : String(value)]),
  );
}

function stepsOf(built: BuildUp) {
  const sums = [
    ['Losses: what cracks is made again', built.lossCents],
    ['Overhead of the studio', built.overheadCents],
    ['Contingency', built.contingencyCents],
    ['Margin', built.marginCents],
    ['Crate, freight, travel, hanging', built.extrasCents],
  ] as const;
  return [
    ...built.direct.map(({ words, basis, cents }) => ({ words, basis, cents: cents.toString() })),
    ...sums.map(([words, cents]) => ({ words, basis: '', cents: cents.toString() })),
  ];
}
