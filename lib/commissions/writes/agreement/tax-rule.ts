import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import type { KeepTaxRuleInput } from '@/lib/commissions/input/agreement/tax-rule';
import { readTaxRules } from '@/lib/commissions/reads/agreement/tax';
import { decideTaxRule } from '@/lib/commissions/rules/agreement/tax-days';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { carryOut, type AnyRefusal } from '@/lib/commissions/writes/carry-out';
import { dateFromDay } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** What the owner keeps of a state. */
export type TaxRuleToKeep = Omit<KeepTaxRuleInput, 'requestKey'>;

/**
 * Keeps what a state says about a commission from a day on, and closes what was kept before; what
 * was handed over before keeps the tax it was handed over with.
 *
 * @returns the state as it is spelt here; refuses, in this order: not allowed, a key used for
 *   something else, a state without a place, a day that another one reaches into
 */
export async function keepTaxRule(
  doer: Doer,
  input: KeepTaxRuleInput,
): Promise<Result<{ state: string }, AnyRefusal>> {
  const { requestKey, ...rule } = input;
  const command = {
    name: 'keepTaxRule',
    permission: 'settings.keep',
    key: requestKey,
    input: rule,
  } as const;
  return carryOut(doer, command, (tx) => addTaxRule(tx, doer, rule));
}

/** The step of {@link keepTaxRule}: joins the caller's transaction, asks nobody for leave. */
export async function addTaxRule(
  tx: Tx,
  doer: Doer,
  rule: TaxRuleToKeep,
): Promise<Result<{ state: string }, CommissionRefusal>> {
  const place = await tx.taxPlace.findFirst({
    where: { state: { equals: rule.state, mode: 'insensitive' } },
    select: { state: true },
    orderBy: { id: 'asc' },
  });
  if (!place) return refuse({ code: 'unknown_state', state: rule.state });
  const { state } = place;
  const decided = decideTaxRule(await readTaxRules(tx, { state }), rule);
  if (!decided.ok) return decided;
  const fromOn = dateFromDay(rule.fromOn);
  if (decided.value) {
    await tx.commissionTaxRule.update({
      where: { id: decided.value.id },
      data: { untilOn: fromOn },
      select: { id: true },
    });
  }
  const { id } = await tx.commissionTaxRule.create({
    data: { ...rule, state, fromOn },
    select: { id: true },
  });
  const facts = { ...rule, state, before: decided.value?.treatment ?? null };
  const did = 'set how a commission is taxed';
  await recordAudit(tx, doer, { did, subject: 'CommissionTaxRule', subjectId: id, facts });
  return ok({ state });
}
