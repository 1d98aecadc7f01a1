import { timeWords } from '@/lib/dates/rules/time-of-day';
import type { AppointmentKind } from '@/lib/installation/rules';
import { titleWords } from '@/lib/installation/rules/diary/words';
import { formatWeight, type WeightSystem } from '@/lib/units/rules';
import type { CalendarEvent, CalendarMethod } from './file';

/** An appointment as a calendar is told of it: no price, and nobody's telephone. */
export type ForCalendar = {
  readonly id: string;
  readonly kind: AppointmentKind;
  readonly sequence: number;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly address: string;
  readonly travelMinutes: number;
  readonly meets: string;
  readonly prepares: string;
  readonly fallBack: string;
  readonly note: string;
  readonly leadName: string;
  /** Who else goes along. */
  readonly withNames: readonly string[];
  readonly commission: {
    readonly number: number;
    readonly title: string;
    readonly collector: string;
  } | null;
  readonly weight: { readonly weightG: number; readonly isByScale: boolean } | null;
  readonly calledOffWhy: string | null;
  readonly madeAt: Date;
  readonly changedAt: Date;
};

/** Where the gallery is found, and how it tells times and weights. */
export type CalendarManner = { readonly zone: string; readonly system: WeightSystem };

/**
 * An appointment as those who go along read it in their own calendar.
 *
 * @param origin under which the gallery is found; null to leave the way to its page out
 */
export function eventForStaff(
  told: ForCalendar,
  manner: CalendarManner & { origin: string | null },
): CalendarEvent {
  const { commission, calledOffWhy, leadName, withNames, fallBack } = told;
  const lines = [
    calledOffWhy === null ? null : `Called off: ${calledOffWhy}`,
    commission && `For ${commission.collector}, commission ${commission.number}.`,
    withNames.length > 0
      ? `${leadName} leads, with ${withNames.join(', ')}.`
      : `${leadName} leads.`,
    told.meets && `Who meets you: ${withoutTelephone(told.meets)}`,
    weightLine(told, manner),
    travelLine(told, manner.zone),
    told.prepares && `Ready there: ${withoutTelephone(told.prepares)}`,
    fallBack && `If weather or road forbid it: ${withoutTelephone(fallBack)}`,
    told.note && withoutTelephone(told.note),
  ];
  const href = manner.origin === null ? null : `${manner.origin}/diary/${told.id}`;
  return eventOf(told, { lines, href });
}

/** An appointment as the collector keeps it: when and where, who comes, and what is asked of them. */
export function theirEvent(told: ForCalendar, gallery: { name: string }): CalendarEvent {
  const { calledOffWhy, leadName, withNames, prepares } = told;
  const who = [leadName, ...withNames].join(', ');
  const lines = [
    calledOffWhy === null ? null : `Called off: ${calledOffWhy}`,
    `${gallery.name}: ${who} ${withNames.length > 0 ? 'come' : 'comes'}.`,
    prepares && `What is asked of you: ${prepares}`,
  ];
  return eventOf(told, { lines, href: null });
}

/** What a file of one appointment does: puts it into a calendar, or takes it out again. */
export function methodOf({ calledOffWhy }: ForCalendar): CalendarMethod {
  return calledOffWhy === null ? 'PUBLISH' : 'CANCEL';
}

function eventOf(
  told: ForCalendar,
  { lines, href }: { lines: readonly (string | null)[]; href: string | null },
): CalendarEvent {
  const { sequence, startsAt, endsAt, address, madeAt, changedAt } = told;
  const title = titleWords(told.kind, told.commission?.title ?? null, address);
  const isOff = told.calledOffWhy !== null;
  return {
    ...{ uid: told.id, sequence, startsAt, endsAt, madeAt, changedAt, isOff, href },
    summary: isOff ? `Called off: ${title}` : title,
    description: lines.filter(Boolean).join('\n'),
    location: address,
  };
}

function weightLine({ weight }: ForCalendar, { system }: CalendarManner): string | null {
  if (!weight) return null;
  const { weightG, isByScale } = weight;
  return `Weighs ${formatWeight(weightG, system)}, ${isByScale ? 'by the scale' : 'about, as reckoned'}.`;
}

function travelLine({ travelMinutes, startsAt }: ForCalendar, zone: string): string | null {
  if (travelMinutes === 0) return null;
  const leavesAt = new Date(startsAt.getTime() - travelMinutes * 60_000);
  return `${travelMinutes} minutes on the way: leave at ${timeWords(leavesAt, zone)}.`;
}

/**
 * A text without anybody's telephone: a calendar is copied to whoever its owner shows it to, and
 * the number stands on the appointment's page.
 *
 * @example withoutTelephone('Marit, 555-0134 010') // 'Marit, (number on its page)'
 */
export function withoutTelephone(text: string): string {
  return text.replaceAll(/\+?\(?\d(?:[\s().–-]{0,2}\d){6,14}/g, '(number on its page)');
}
