import 'server-only';
import {
  agreementForCollector,
  changeOrdersForCollector,
  type SignatureShown,
} from '@/lib/commissions/reads/agreement/agreements';
import { agreementPaperForCollector } from '@/lib/commissions/reads/agreement/paper-for';
import { invoiceForCollector } from '@/lib/commissions/reads/money/invoice';
import { settlementForCollector } from '@/lib/commissions/reads/money/settlement';
import { proposalForCollector } from '@/lib/commissions/reads/proposal/for-collector';
import { dayOf } from '@/lib/dates/rules';
import { agreementPdf, changeOrderPdf } from '@/lib/documents/commissions/agreement';
import { invoicePdf } from '@/lib/documents/commissions/invoice';
import { settlementPdf } from '@/lib/documents/commissions/settlement';
import { proposalPdf } from '@/lib/documents/commissions/proposal';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import type { OpenPage } from '../../../open-page';

type TheirPaper = { name: string; bytes: Uint8Array<ArrayBuffer> };

/** One of the collector's papers by its name in the address; null for anything else. */
export async function readTheirPaper(page: OpenPage, kind: string): Promise<TheirPaper | null> {
  if (kind === 'proposal') return proposalPaper(page);
  if (kind === 'agreement') return agreementPaper(page);
  if (kind === 'settlement') return settlementPaper(page);
  const [, what, number] = /^(change|invoice)-([1-9]\d{0,8})$/.exec(kind) ?? [];
  if (what === 'change') return changePaper(page, Number(number));
  return what === 'invoice' ? invoicePaper(page, Number(number)) : null;
}

async function invoicePaper(page: OpenPage, number: number): Promise<TheirPaper | null> {
  const { link, gallery } = page;
  const which = { number, today: todayOf(page) };
  const told = await invoiceForCollector(link.commissionId, which);
  if (!told || told.ask.withdrawnWhy !== null) return null;
  return { name: `invoice-${number}`, bytes: await invoicePdf(told, gallery) };
}

async function settlementPaper({ link, gallery }: OpenPage): Promise<TheirPaper | null> {
  const told = await settlementForCollector(link.commissionId);
  if (!told) return null;
  const name = `settlement-${link.commissionNumber}`;
  return { name, bytes: await settlementPdf(told, gallery) };
}

async function proposalPaper(page: OpenPage): Promise<TheirPaper | null> {
  const { link, gallery } = page;
  const proposal = await proposalForCollector(link.commissionId);
  if (!proposal) return null;
  const on = proposal.sent?.on ?? todayOf(page);
  const paper = { proposal, ...headOf(page), on, picture: null };
  const name = `proposal-${link.commissionNumber}-${proposal.version}`;
  return { name, bytes: await proposalPdf(paper, gallery) };
}

async function agreementPaper(page: OpenPage): Promise<TheirPaper | null> {
  const { link, gallery } = page;
  const signed = await agreementForCollector(link.commissionId);
  const today = todayOf(page);
  const paper = signed ?? (await agreementPaperForCollector(link.commissionId, today));
  if (!paper) return null;
  const { body, contentSha256 } = paper;
  const told = {
    ...{ body, contentSha256, ...headOf(page), on: signed?.agreedOn ?? today },
    ...(await signatureOf(signed?.signature ?? null)),
  };
  const name = `agreement-${link.commissionNumber}`;
  return { name, bytes: await agreementPdf(told, gallery) };
}

async function changePaper(page: OpenPage, number: number): Promise<TheirPaper | null> {
  const { link, gallery } = page;
  const orders = await changeOrdersForCollector(link.commissionId);
  const order = orders.find((each) => each.number === number);
  if (!order) return null;
  const { body, contentSha256, signed, offeredOn } = order;
  const told = {
    ...{ number, body, contentSha256, ...headOf(page), on: signed?.on ?? offeredOn },
    ...(await signatureOf(signed)),
  };
  const name = `change-order-${link.commissionNumber}-${number}`;
  return { name, bytes: await changeOrderPdf(told, gallery) };
}

function headOf({ link }: OpenPage) {
  const { title: work, commissionNumber, forName: collector } = link;
  return { work, commissionNumber, collector };
}

async function signatureOf(signature: SignatureShown | null) {
  const fileId = signature?.fileId ?? null;
  return { signature, drawing: fileId === null ? null : await readPaperPicture(fileId) };
}

function todayOf({ at, gallery }: OpenPage) {
  return dayOf(at, gallery.timeZone);
}
