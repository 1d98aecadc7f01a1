import 'server-only';
import { daysForCollector } from '@/lib/installation/reads/offers/days';
import {
  agreementForCollector,
  changeOrdersForCollector,
} from '@/lib/commissions/reads/agreement/agreements';
import { agreementPaperForCollector } from '@/lib/commissions/reads/agreement/paper-for';
import { proposalForCollector } from '@/lib/commissions/reads/proposal/for-collector';
import { dayOf, formatDay } from '@/lib/dates/rules';
import type { AppointmentKind } from '@/lib/installation/rules';
import type { OpenPage } from '../open-page';
import { shownOnce } from './shown-once';

/** Something that a collector is to decide, and the page below theirs on which they do. */
export type Decision = { to: string; title: string; words: string; act: string };

/** What waits for the collector's word, the largest first. */
export async function readDecisions(page: OpenPage): Promise<Decision[]> {
  const found = await Promise.all([
    ofProposal(page),
    ofShown(page),
    ofAgreement(page),
    ofChanges(page),
    ofDays(page),
  ]);
  return found.flat();
}

async function ofProposal({ link, at, gallery }: OpenPage): Promise<Decision[]> {
  const proposal = await proposalForCollector(link.commissionId);
  const today = dayOf(at, gallery.timeZone);
  if (!proposal || proposal.answer || proposal.validUntilOn < today) return [];
  const until = formatDay(proposal.validUntilOn, 'long');
  return [
    {
      to: 'proposal',
      title: `Proposal ${proposal.version}`,
      words: `What is made, what it costs and when each part is paid. It holds until ${until}.`,
      act: 'Read it and answer',
    },
  ];
}

/** The newest sketch without an answer, and every tile without one. */
async function ofShown({ link }: OpenPage): Promise<Decision[]> {
  const shown = await shownOnce(link.commissionId);
  const newest = shown.findLast(({ what }) => what === 'sketch');
  const sketchHasYes = shown.some(({ what, yes }) => what === 'sketch' && yes !== null);
  return shown
    .filter(({ yes, changes }) => yes === null && changes.length === 0)
    .filter((each) => (each.what === 'sketch' ? each === newest && !sketchHasYes : true))
    .map(({ id, label, what, tile }) => ({
      to: `shown/${id}`,
      title: what === 'sketch' ? `Sketch ${label}` : `Colour tile ${label}`,
      words: tile ? tile.glazes : 'Take your time with it, and say yes or mark what should change.',
      act: 'Look at it and answer',
    }));
}

async function ofAgreement({ link, at, gallery }: OpenPage): Promise<Decision[]> {
  if (await agreementForCollector(link.commissionId)) return [];
  const today = dayOf(at, gallery.timeZone);
  if (!(await agreementPaperForCollector(link.commissionId, today))) return [];
  return [
    {
      to: 'agreement',
      title: 'The agreement',
      words: 'What the proposal said, as the paper that both sides hold to.',
      act: 'Read it and sign',
    },
  ];
}

async function ofChanges({ link }: OpenPage): Promise<Decision[]> {
  const orders = await changeOrdersForCollector(link.commissionId);
  return orders
    .filter(({ signed, withdrawnWhy }) => !signed && withdrawnWhy === null)
    .map(({ number, words }) => ({
      to: `change/${number}`,
      title: `Change order ${number}`,
      words,
      act: 'Read it and sign',
    }));
}

const whatDay: Readonly<Record<AppointmentKind, string>> = {
  hanging: 'we come and hang it',
  delivery: 'we bring it',
  site_visit: 'we come and look at the wall',
  fetching: 'you come for it',
  after_care: 'we come and look after it',
};

async function ofDays({ link, at, gallery }: OpenPage): Promise<Decision[]> {
  const how = { zone: gallery.timeZone, now: at };
  const offers = await daysForCollector(link.commissionId, how);
  const open = offers.find((offer) => offer.chosen === null);
  if (!open) return [];
  const free = open.slots.filter((slot) => slot.isFree).map(({ on }) => formatDay(on, 'short'));
  const words =
    free.length > 0 ? `Still free: ${free.join('; ')}.` : 'None of the days is free any more.';
  return [
    { to: 'days', title: `The day on which ${whatDay[open.kind]}`, words, act: 'Choose a day' },
  ];
}
