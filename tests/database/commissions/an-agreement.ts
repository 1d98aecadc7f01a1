import { randomUUID } from 'node:crypto';
import type { AnyDoer, PageDoer } from '@/lib/access/rules';
import {
  offerChangeInput,
  signAgreementInput,
  type SignAgreementInput,
  type SignChangeOrderInput,
} from '@/lib/commissions/input/agreement/agreement';
import { writeProposalInput } from '@/lib/commissions/input/proposal/proposal';
import { readAgreementPaper } from '@/lib/commissions/reads/agreement/paper';
import { offerChange, signChangeOrder } from '@/lib/commissions/writes/agreement/change';
import { signAgreement } from '@/lib/commissions/writes/agreement/sign';
import { noteAnswer, sendProposal } from '@/lib/commissions/writes/proposal/answer';
import { writeProposal } from '@/lib/commissions/writes/proposal/write';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { OpenGallery } from '@/tests/database/sales/open-gallery';
import { asked, dayAt, done, on } from './a-commission';

/** The day on which these stories are agreed: a Monday. */
export const agreedOn = '2026-05-04';

/** A proposal that went out, as the form writes it; not answered. */
export async function proposed(
  gallery: OpenGallery,
  commissionId: string,
  fields: Record<string, unknown> = {},
) {
  const form = writeProposalInput.parse({
    ...{ requestKey: randomUUID(), commissionId, taxPlaceId: gallery.taxPlaceId },
    ...{ widthUm: '60 in', heightUm: '36 in', depthUm: '1 in', pieces: '60', coats: '3' },
    ...{ firings: '8', design: '14', making: '60', glazing: '26', kiln: '12', assembly: '16' },
    ...{ office: '10', framed: 'yes', installationCents: '600', askedCents: '10,000' },
    ...{ apart: ['installation'], designFeePercent: '8', designFeeCredited: 'yes' },
    ...{ stepName1: 'Deposit', stepEvent1: 'agreed', stepMuch1: '50 %' },
    ...{ stepName2: 'Balance', stepEvent2: 'before_hand_over', stepMuch2: '' },
    ...{ understanding: 'Herons, as at dusk', taxAs: 'goods_hung', roundsIncluded: '2' },
    ...{ extraRoundCents: '150', readyFromOn: '2026-09-01', readyToOn: '2026-10-01' },
    ...{ validUntilOn: '2026-06-03', notIncluded: '', terms: 'Fired clay moves.', ...fields },
  });
  const owner = on(gallery.owner, agreedOn);
  const { proposalId } = done(await writeProposal(owner, form));
  const sending = { requestKey: randomUUID(), commissionId, proposalId, how: 'by mail' as const };
  done(await sendProposal(owner, sending));
  return proposalId;
}

/** Notes that a proposal was accepted on a day. */
export async function accept(
  gallery: OpenGallery,
  { commissionId, proposalId, day }: { commissionId: string; proposalId: string; day: Day },
) {
  const { contentSha256 } = await db().proposal.findUniqueOrThrow({ where: { id: proposalId } });
  return noteAnswer(on(gallery.owner, day), {
    ...{ requestKey: randomUUID(), commissionId, proposalId, contentSha256, accepted: 'yes' },
    ...{ answeredOn: day, words: null, answeredBy: 'Marit Oland', how: 'in_person' },
  });
}

/** A commission whose proposal was accepted, and nothing signed. */
export async function readyToSign(gallery: OpenGallery, fields: Record<string, unknown> = {}) {
  const { commissionId, number } = await asked(gallery.maker, agreedOn);
  const proposalId = await proposed(gallery, commissionId, fields);
  done(await accept(gallery, { commissionId, proposalId, day: agreedOn }));
  return { commissionId, number, proposalId };
}

/** The form that signs what the paper says on a day. */
export async function toSign(
  commissionId: string,
  day: Day,
  fields: Record<string, unknown> = {},
): Promise<SignAgreementInput> {
  const paper = await readAgreementPaper(db(), commissionId, day);
  return signAgreementInput.parse({
    ...{ requestKey: randomUUID(), commissionId, signedWhere: 'gallery' },
    ...{ contentSha256: paper?.contentSha256 ?? 'a'.repeat(64) },
    ...{ signedName: 'Marit Oland', signedAs: 'typed', ...fields },
  });
}

/** A commission that was agreed by its proposal: 10,000.00 before tax, half of it down. */
export async function agreedByProposal(gallery: OpenGallery, fields: Record<string, unknown> = {}) {
  const ready = await readyToSign(gallery, fields);
  const form = await toSign(ready.commissionId, agreedOn);
  done(await signAgreement(on(gallery.owner, agreedOn), form));
  return ready;
}

/** A collector on their own page. */
export async function atPage(gallery: OpenGallery, commissionId: string): Promise<PageDoer> {
  const { id: linkId } = await db().collectorLink.create({
    data: {
      ...{ commissionId, forName: 'Marit Oland', madeById: gallery.owner.id },
      tokenSha256: randomUUID().replaceAll('-', '').repeat(2),
      ...{ madeAt: dayAt(agreedOn), runsOutAt: dayAt('2026-12-31') },
    },
  });
  return { page: { linkId, commissionId, name: 'Marit Oland' }, at: dayAt(agreedOn) };
}

/** The form that writes a change order down. */
export function aChange(commissionId: string, fields: Record<string, unknown> = {}) {
  return offerChangeInput.parse({
    ...{ requestKey: randomUUID(), commissionId, words: 'Two more terns', askedBy: 'Marit Oland' },
    ...{ kind: 'work', way: 'more', amountCents: '400', ...fields },
  });
}

/** Writes a change order down and gives what is to be signed of it. */
export async function changeOffered(
  gallery: OpenGallery,
  commissionId: string,
  fields: Record<string, unknown> = {},
) {
  const form = aChange(commissionId, fields);
  const { changeOrderId } = done(await offerChange(on(gallery.owner, agreedOn), form));
  return changeToSign(commissionId, changeOrderId);
}

/** The form that signs a change order. */
export async function changeToSign(
  commissionId: string,
  changeOrderId: string,
): Promise<SignChangeOrderInput> {
  const { contentSha256 } = await db().changeOrder.findUniqueOrThrow({
    where: { id: changeOrderId },
  });
  return {
    ...{ requestKey: randomUUID(), commissionId, changeOrderId, contentSha256 },
    ...{ signedName: 'Marit Oland', signedCapacity: '', signedAs: 'typed', drawing: '' },
  };
}

/** Signs a change order. */
export async function signChange(doer: AnyDoer, form: SignChangeOrderInput) {
  return signChangeOrder(doer, form);
}

/** What became of something: done, or why not. */
export function code(result: { ok: boolean; refusal?: { code: string } }): string {
  return result.ok ? 'done' : (result.refusal?.code ?? 'nothing');
}
