import { formatInstant, type Day } from '@/lib/dates/rules';
import type { LossRefusal, MoveRefusal } from '@/lib/studio/rules';
import type { Scale } from '@/lib/studio/rules/kilns/degrees';
import { energyRefusalMessage } from '@/lib/studio/rules/kilns/energy';
import { firingRefusalMessage, openRefusalMessage } from '@/lib/studio/rules/kilns/firing';
import { piecesWords, shortDay } from '@/lib/studio/rules/words';
import {
  lossRefusalMessage,
  moveRefusalMessage,
  type AnyRefusal,
} from '@/lib/studio/rules/refusals';
import type { LightRefusal, ReadingRefusal, TooFresh } from './lighting';
import type { OpeningRefusal } from './opening';
import type { LineRefusal, PlanRefusal, ScheduleRefusal, StandRefusal } from './planning';

/** Pieces of a load that could not go where the opening sends them. */
export type NotMovedRefusal =
  | { code: 'pieces_stay'; jobNumber: number; why: MoveRefusal }
  | { code: 'loss_stays'; jobNumber: number; why: LossRefusal };

/** How temperatures and times are told: the studio’s scale, the gallery’s zone. */
export type Telling = { scale: Scale; zone: string };

/** Narrows a refusal to those of some codes. */
function isOneOf<Refusal extends { code: string }, Code extends Refusal['code']>(
  refusal: Refusal,
  codes: readonly Code[],
): refusal is Extract<Refusal, { code: Code }> {
  return codes.some((code) => code === refusal.code);
}

const anyCodes = ['not_allowed', 'key_used_for_something_else'] as const;
const standCodes = [
  'no_such_firing',
  'called_off_already',
  'lit_already',
  'opened_already',
] as const;
const shutCodes = ['temperature_not_read', 'too_hot'] as const;
const toldCodes = ['do_not_add_up', 'lost_without_cause', 'say_what_was_seen'] as const;

/** Says why a firing was not planned. */
export function planRefusalMessage(refusal: PlanRefusal | AnyRefusal): string {
  if (isOneOf(refusal, anyCodes)) return moveRefusalMessage(refusal);
  switch (refusal.code) {
    case 'no_such_kiln':
      return 'That kiln is not in the studio’s list.';
    case 'kiln_is_retired':
      return `${refusal.kiln} is no longer used. Choose another kiln.`;
    case 'cone_not_fired_here':
      return `${refusal.kiln} is fired to cone ${listed(refusal.cones)}. Choose one of them, or add the cone on the kiln’s page.`;
    case 'nothing_waits':
      return `Nothing waits for cone ${refusal.cone} just now.`;
  }
}

function standMessage(refusal: StandRefusal): string {
  switch (refusal.code) {
    case 'no_such_firing':
      return 'That firing is not in the log.';
    case 'called_off_already':
      return `Firing ${refusal.number} was called off. Plan another one.`;
    case 'lit_already':
      return `${refusal.by} has lit firing ${refusal.number} already. What lies in it stays as it is.`;
    case 'opened_already':
      return `${refusal.by} has opened firing ${refusal.number} already. Look at what was written down.`;
  }
}

/** Says why pieces were not laid into a load, or it was not called off. */
export function lineRefusalMessage(refusal: LineRefusal | AnyRefusal): string {
  if (isOneOf(refusal, anyCodes)) return moveRefusalMessage(refusal);
  if (isOneOf(refusal, standCodes)) return standMessage(refusal);
  switch (refusal.code) {
    case 'waits_for_something_else':
      return `Those pieces do not wait for cone ${refusal.cone}. Load this page again to see what does.`;
    case 'too_many':
      return refusal.free === 0
        ? `No piece of job ${refusal.jobNumber} is free for this load any more.`
        : `Only ${refusal.free} of the ${refusal.wanted} pieces of job ${refusal.jobNumber} are free for this load.`;
    case 'size_not_known':
      return `Write how large a piece of job ${refusal.jobNumber} is: width, depth and height as it lies on the shelf.`;
    case 'say_which_parts_go':
      return `Choose which parts of job ${refusal.jobNumber} go in.`;
    case 'parts_not_there':
      return `A part of job ${refusal.jobNumber} is not at this kiln any more. Load the page again.`;
  }
}

/** Says why a schedule was not kept. */
export function scheduleRefusalMessage(refusal: ScheduleRefusal | AnyRefusal): string {
  if (isOneOf(refusal, anyCodes)) return moveRefusalMessage(refusal);
  if (isOneOf(refusal, standCodes)) return standMessage(refusal);
  return firingRefusalMessage(refusal);
}

/** Says why a kiln was not lit. */
export function lightRefusalMessage(refusal: LightRefusal | AnyRefusal): string {
  if (isOneOf(refusal, anyCodes)) return moveRefusalMessage(refusal);
  if (isOneOf(refusal, standCodes)) return standMessage(refusal);
  switch (refusal.code) {
    case 'nothing_laid_in':
      return 'Nothing lies in this load yet. Lay something in first.';
    case 'kiln_burns':
      return `${refusal.by} has lit firing ${refusal.number} in ${refusal.kiln}. Open that one first, or plan this load for another kiln.`;
    case 'pieces_gone':
      return (
        `Of job ${refusal.jobNumber}, ${refusal.title}, ${piecesWords(refusal.pieces)} ` +
        `${refusal.pieces === 1 ? 'lies' : 'lie'} in this load, and ${refusal.free} ` +
        `${refusal.free === 1 ? 'stands' : 'stand'} at the kiln now. Change its line and light it then.`
      );
    case 'are_they_dry':
      return `Are they bone dry? ${refusal.tooFresh.map(tooFreshWords).join(' ')} Say below how you know, or take them out.`;
  }
}

/** What is asked of pieces that dried too short. */
export function tooFreshWords(fresh: TooFresh): string {
  const { jobNumber, title, pieces, driedDays, needsDays } = fresh;
  return (
    `Job ${jobNumber}, ${title}: ${piecesWords(pieces)} stood drying for ` +
    `${daysWords(driedDays)}, and ${daysWords(needsDays)} are the least.`
  );
}

/** `1 day`, `14 days`. */
export function daysWords(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}

/** Says why a reading was not written down. */
export function readingRefusalMessage(refusal: ReadingRefusal | AnyRefusal): string {
  if (isOneOf(refusal, anyCodes)) return moveRefusalMessage(refusal);
  switch (refusal.code) {
    case 'no_such_firing':
    case 'opened_already':
      return standMessage(refusal);
    case 'not_lit_yet':
      return `Firing ${refusal.number} was not lit yet, so it has nothing to read.`;
    case 'before_it_was_lit':
      return 'That is before it was lit. Look at the time once more.';
    case 'not_read_yet':
      return 'That time has not come yet. Look at the time once more.';
  }
}

/** Says why a kiln was not opened; too hot a one is told when it will be cool. */
export function openingRefusalMessage(
  refusal: OpeningRefusal | NotMovedRefusal | AnyRefusal,
  telling: Telling,
): string {
  if (isOneOf(refusal, anyCodes)) return moveRefusalMessage(refusal);
  if (isOneOf(refusal, ['no_such_firing', 'opened_already'])) return standMessage(refusal);
  if (isOneOf(refusal, shutCodes)) return shutMessage(refusal, telling);
  if (isOneOf(refusal, toldCodes)) return toldMessage(refusal);
  if (isOneOf(refusal, ['not_lit_yet'])) {
    return `Firing ${refusal.number} was not lit, so there is nothing to open.`;
  }
  if (isOneOf(refusal, ['pieces_stay'])) {
    return `Job ${refusal.jobNumber}: ${moveRefusalMessage(refusal.why)}`;
  }
  if (isOneOf(refusal, ['loss_stays'])) {
    return `Job ${refusal.jobNumber}: ${lossRefusalMessage(refusal.why)}`;
  }
  return energyRefusalMessage(refusal);
}

function shutMessage(
  refusal: Extract<OpeningRefusal, { code: (typeof shutCodes)[number] }>,
  { scale, zone }: Telling,
): string {
  const said = openRefusalMessage(refusal, scale);
  if (refusal.code !== 'too_hot' || !refusal.coolAt) return said;
  return `${said} It should be cool about ${formatInstant(refusal.coolAt, zone)}.`;
}

function toldMessage(
  refusal: Extract<OpeningRefusal, { code: (typeof toldCodes)[number] }>,
): string {
  const job = `job ${refusal.jobNumber}, ${refusal.title}`;
  switch (refusal.code) {
    case 'do_not_add_up':
      return `Of ${job}, ${refusal.pieces} went in, and ${refusal.told} are told of. Count them once more.`;
    case 'lost_without_cause':
      return `Say why pieces of ${job}, were lost.`;
    case 'say_what_was_seen':
      return `Say in a few words what happened to ${job}.`;
  }
}

/** A list in a sentence: `04`, `04 or 6`, `04, 05 or 6`. */
function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} or ${last}`;
}

/** A count of turns: `0.4 of a turn`, `1 turn`, `2.3 turns`. */
export function turnsWords(hundredths: number): string {
  if (hundredths === 0) return 'no turn';
  const tenths = Math.max(1, Math.round(hundredths / 10));
  const [whole, over] = [Math.floor(tenths / 10), tenths % 10];
  const figure = over === 0 ? String(whole) : `${whole}.${over}`;
  if (tenths < 10) return `${figure} of a turn`;
  return tenths === 10 ? '1 turn' : `${figure} turns`;
}

/** A count of weeks: `less than a week`, `1 week`, `2.5 weeks`. */
export function weeksWords(tenths: number): string {
  if (tenths < 10) return 'less than a week';
  if (tenths === 10) return '1 week';
  const [whole, over] = [Math.floor(tenths / 10), tenths % 10];
  return over === 0 ? `${whole} weeks` : `${whole}.${over} weeks`;
}

/** When pieces are needed, as the end of a sentence: `needed 4 May`, `nobody waits for them`. */
export function neededWords(neededOn: Day | null, todayOn: Day): string {
  return neededOn === null ? 'nobody waits for them' : `needed ${shortDay(neededOn, todayOn)}`;
}
