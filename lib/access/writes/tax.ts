import 'server-only';
import { recordAudit, type Fact } from '@/lib/audit/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse } from '@/lib/platform/result';
import type { TaxPlaceInput, TaxStateInput, TreatmentInput } from '@/lib/tax/input';
import { addRate, endRate } from '@/lib/tax/writes';
import { addTreatment, putState, putTaxPlace } from '@/lib/tax/writes/states';
import type { EndRateInput, NewRateInput } from '../input/set-up';
import type { Doer } from '../rules';
import { keepSetting, type SettingKept } from './keep-setting';

/**
 * Adds a place with rates of its own, or gives one another name.
 *
 * @returns the place's id; refuses `not_allowed`, then see {@link putTaxPlace}
 */
export async function keepTaxPlace(doer: Doer, input: TaxPlaceInput): SettingKept {
  const { requestKey, ...asked } = input;
  return keepSetting(doer, { name: 'keepTaxPlace', requestKey, asked }, async (tx) => {
    const kept = await putTaxPlace(tx, asked);
    if (!kept.ok) return kept;
    const did = asked.placeId === null ? 'added a tax place' : 'renamed a tax place';
    await tell(tx, doer, { did, subjectId: kept.value, facts: asked });
    return kept;
  });
}

/**
 * Lets a tax rate hold at a place from a day on.
 *
 * @returns the authority; refuses `not_allowed`, then a place that is not there, then see
 *   {@link addRate}
 */
export async function keepRate(doer: Doer, input: NewRateInput): SettingKept {
  const { requestKey, placeId, ...rate } = input;
  const asked = { placeId, ...rate };
  return keepSetting(doer, { name: 'keepRate', requestKey, asked }, async (tx) => {
    const place = await tx.taxPlace.findUnique({ where: { id: placeId }, select: { id: true } });
    if (!place) return refuse({ code: 'place_unknown' });
    const added = await addRate(tx, placeId, rate);
    if (!added.ok) return added;
    const facts = { ...rate, before: added.value?.ratePercent ?? null };
    await tell(tx, doer, { did: 'set a tax rate', subjectId: placeId, facts });
    return ok(rate.authority);
  });
}

/** Ends a tax rate on a day. @returns the authority; refuses `not_allowed`, see {@link endRate} */
export async function stopRate(doer: Doer, input: EndRateInput): SettingKept {
  const { requestKey, rateId, untilOn } = input;
  const asked = { rateId, untilOn };
  return keepSetting(doer, { name: 'stopRate', requestKey, asked }, async (tx) => {
    const ended = await endRate(tx, rateId, untilOn);
    if (!ended.ok) return ended;
    const { authority, ratePercent, placeId } = ended.value;
    const facts = { authority, ratePercent, untilOn };
    await tell(tx, doer, { did: 'ended a tax rate', subjectId: placeId, facts });
    return ok(authority);
  });
}

/**
 * Keeps what a state says about one kind of line from a day on.
 *
 * @returns the state; refuses `not_allowed`, then see {@link addTreatment}
 */
export async function keepTreatment(doer: Doer, input: TreatmentInput): SettingKept {
  const { requestKey, ...asked } = input;
  return keepSetting(doer, { name: 'keepTreatment', requestKey, asked }, async (tx) => {
    const added = await addTreatment(tx, asked);
    if (!added.ok) return added;
    const { state } = asked;
    const facts = { ...asked, before: added.value?.treatment ?? null };
    await tell(tx, doer, {
      did: 'set what is taxed',
      subject: 'TaxTreatment',
      subjectId: state,
      facts,
    });
    return ok(state);
  });
}

/**
 * Keeps since when the gallery collects in a state, and from how much it must.
 *
 * @returns the state as it is spelt here; refuses `not_allowed`, then see {@link putState}
 */
export async function keepTaxState(doer: Doer, input: TaxStateInput): SettingKept {
  const { requestKey, ...asked } = input;
  return keepSetting(doer, { name: 'keepTaxState', requestKey, asked }, async (tx) => {
    const kept = await putState(tx, asked);
    if (!kept.ok) return kept;
    const told = {
      did: 'kept what another state asks',
      subject: 'TaxState',
      subjectId: kept.value,
    };
    await tell(tx, doer, { ...told, facts: asked });
    return kept;
  });
}

type Told = {
  did: string;
  subject?: string;
  subjectId: string;
  facts: Readonly<Record<string, Fact>>;
};

async function tell(tx: Tx, doer: Doer, told: Told): Promise<void> {
  await recordAudit(tx, doer, { subject: 'TaxPlace', ...told });
}
