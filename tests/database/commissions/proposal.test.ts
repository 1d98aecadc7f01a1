import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { keepCommissionTermsInput } from '@/lib/commissions/input/proposal/keep-terms';
import { writeProposalInput } from '@/lib/commissions/input/proposal/proposal';
import { proposalForCollector } from '@/lib/commissions/reads/proposal/for-collector';
import { readCommissionTerms } from '@/lib/commissions/reads/proposal/terms';
import { noteAnswer, sendProposal } from '@/lib/commissions/writes/proposal/answer';
import { keepCommissionTerms } from '@/lib/commissions/writes/proposal/terms';
import { writeProposal } from '@/lib/commissions/writes/proposal/write';
import type { Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { agreed, asked, done, on } from './a-commission';

const day = '2026-05-04';
let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

function aProposal(commissionId: string, fields: Record<string, unknown> = {}) {
  return writeProposalInput.parse({
    ...{ requestKey: randomUUID(), commissionId, taxPlaceId: gallery.taxPlaceId },
    ...{ widthUm: '60 in', heightUm: '36 in', depthUm: '1 in', pieces: '60', coats: '3' },
    ...{ firings: '8', design: '14', making: '60', glazing: '26', kiln: '12', assembly: '16' },
    ...{ office: '10', framed: 'yes', installationCents: '600', askedCents: '' },
    ...{ apart: ['installation', 'frame'], designFeePercent: '8', designFeeCredited: 'yes' },
    ...{ stepName1: 'Deposit', stepEvent1: 'agreed', stepMuch1: '50 %' },
    ...{ stepName2: 'Balance', stepEvent2: 'hung', stepMuch2: '' },
    ...{ understanding: 'Herons, as at dusk', taxAs: 'goods_hung', roundsIncluded: '2' },
    ...{ extraRoundCents: '150', readyFromOn: '2026-09-01', readyToOn: '2026-10-01' },
    ...{ validUntilOn: '2026-06-03', notIncluded: '', terms: 'Fired clay moves.', ...fields },
  });
}

async function written(commissionId: string, fields: Record<string, unknown> = {}) {
  return done(await writeProposal(on(gallery.owner, day), aProposal(commissionId, fields)));
}

async function sent(commissionId: string, fields: Record<string, unknown> = {}) {
  const { proposalId } = await written(commissionId, fields);
  done(await sendProposal(on(gallery.owner, day), aSending(commissionId, proposalId)));
  const { contentSha256 } = await db().proposal.findUniqueOrThrow({ where: { id: proposalId } });
  return { commissionId, proposalId, contentSha256 };
}

function aSending(commissionId: string, proposalId: string) {
  return { requestKey: randomUUID(), commissionId, proposalId, how: 'by mail' as const };
}

type Sent = { commissionId: string; proposalId: string; contentSha256: string };

function answer(
  proposal: Sent,
  accepted: 'yes' | 'no',
  answeredOn: Day = day,
  doneOn = answeredOn,
) {
  return noteAnswer(on(gallery.owner, doneOn), {
    ...{ requestKey: randomUUID(), ...proposal, accepted, answeredOn, words: null },
    ...{ answeredBy: 'Marit Oland', how: 'in_person' },
  });
}

describe('a proposal', () => {
  test('is kept in versions; one that was not sent does not hide the one that was', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const first = await sent(commissionId);
    const second = await written(commissionId, { askedCents: '12,000' });
    expect(second).toMatchObject({ version: 2, priceCents: '1200000' });
    const shown = await proposalForCollector(commissionId);
    expect(shown).toMatchObject({ id: first.proposalId, version: 1 });
    const names = Object.keys(shown ?? {}).join(' ');
    expect(names).not.toMatch(/buildUp|costCents|areaCents|margin/i);
    expect(shown?.lines.reduce((sum, line) => sum + line.amountCents, 0n)).toBe(shown?.priceCents);
    expect(done(await answer(first, 'yes'))).toMatchObject({ version: 1 });
  });

  test('sent twice with one key is kept once', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const proposal = aProposal(commissionId);
    const once = done(await writeProposal(on(gallery.owner, day), proposal));
    expect(done(await writeProposal(on(gallery.owner, day), proposal))).toEqual(once);
    expect(await db().proposal.count({ where: { commissionId } })).toBe(1);
  });

  test.each([
    ['a day that is past', { validUntilOn: '2026-05-03' }, 'valid_until_is_past'],
    ['a price below what stands apart', { askedCents: '100' }, 'price_not_worked_out'],
    ['a plan above the whole', { stepMuch1: '$900,000.00' }, 'plan_above_total'],
  ])('%s refuses it and leaves nothing', async (_label, fields, code) => {
    const { commissionId } = await asked(gallery.maker, day);
    const refused = await writeProposal(on(gallery.owner, day), aProposal(commissionId, fields));
    expect(refused).toMatchObject({ ok: false, refusal: { code } });
    expect(await db().proposal.count({ where: { commissionId } })).toBe(0);
  });

  test('a maker writes none, and none is written once it is agreed', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const byMaker = await writeProposal(on(gallery.maker, day), aProposal(commissionId));
    expect(byMaker).toMatchObject({ ok: false, refusal: { code: 'not_allowed' } });
    await agreed(gallery, { commissionId, day, priceCents: 100n, depositCents: 50n });
    const late = await writeProposal(on(gallery.owner, day), aProposal(commissionId));
    expect(late).toMatchObject({ ok: false, refusal: { code: 'agreed_already' } });
  });

  test('only the newest goes out, and once', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const first = await written(commissionId);
    const second = await sent(commissionId);
    const send = (id: string, at: Day = day) =>
      sendProposal(on(gallery.owner, at), aSending(commissionId, id));
    expect(await send(first.proposalId)).toMatchObject({ refusal: { code: 'newer_proposal' } });
    expect(await send(second.proposalId)).toMatchObject({
      refusal: { code: 'proposal_sent_already' },
    });
    expect(await send(randomUUID())).toMatchObject({ refusal: { code: 'unknown_proposal' } });
    const third = await written(commissionId);
    expect(await send(third.proposalId, '2026-06-04')).toMatchObject({
      refusal: { code: 'proposal_ran_out' },
    });
  });
});

describe('an answer', () => {
  test('is refused to what was not looked at, not sent, or in a day to come', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const one = await sent(commissionId);
    const other = { ...one, contentSha256: 'a'.repeat(64) };
    expect(await answer(other, 'yes')).toMatchObject({ refusal: { code: 'other_proposal' } });
    const nowhere = { ...one, proposalId: randomUUID() };
    expect(await answer(nowhere, 'yes')).toMatchObject({ refusal: { code: 'unknown_proposal' } });
    const tomorrow = await answer(one, 'yes', '2026-05-05', day);
    expect(tomorrow).toMatchObject({ refusal: { code: 'day_to_come' } });
    const { proposalId } = await written(commissionId);
    const unsent = await answer({ ...one, proposalId }, 'yes');
    expect(unsent).toMatchObject({ refusal: { code: 'proposal_not_sent' } });
    done(await sendProposal(on(gallery.owner, day), aSending(commissionId, proposalId)));
    expect(await answer(one, 'yes')).toMatchObject({
      refusal: { code: 'newer_proposal', version: 2 },
    });
  });

  test('holds on the last day, and not on the day after; a no is always heard', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const late = await sent(commissionId);
    expect(await answer(late, 'yes', '2026-06-04')).toMatchObject({
      refusal: { code: 'proposal_ran_out', validUntilOn: '2026-06-03' },
    });
    done(await answer(late, 'no', '2026-06-04'));
    const another = await asked(gallery.maker, day);
    done(await answer(await sent(another.commissionId), 'yes', '2026-06-03'));
  });

  test('two at once: one is kept', async () => {
    const { commissionId } = await asked(gallery.maker, day);
    const one = await sent(commissionId);
    const both = await Promise.all([answer(one, 'yes'), answer(one, 'no')]);
    expect(both.filter((each) => each.ok)).toHaveLength(1);
    expect(both.find((each) => !each.ok)).toMatchObject({ refusal: { code: 'answered_already' } });
  });

  test('the database changes and deletes nothing of it', async () => {
    await expect(sql(`update "ProposalAnswer" set "accepted" = true`)).rejects.toThrow();
    await expect(sql(`update "Proposal" set "body" = 'else'`)).rejects.toThrow();
    await expect(sql(`delete from "ProposalLine"`)).rejects.toThrow();
  });
});

test('the terms are kept in the measures of the gallery, and come back as they were said', async () => {
  const plan = { stepName1: 'All of it', stepEvent1: 'agreed', stepMuch1: '100 %' };
  const said = {
    ...{ requestKey: randomUUID(), unit: 'in', paperSize: 'a4', hourCents: '50', clayCents: '1' },
    ...{ design: '1', making: '4', glazing: '1.75', kiln: '0.8', assembly: '1', office: '0.5' },
    ...{ glazeCents: '1.30', firingCents: '30', boardCents: '8.36', frameCents: '7.62' },
    ...{ lossPercent: '12', overheadPercent: '20', contingencyPercent: '8', marginPercent: '15' },
    ...{ shallowCents: '450', middleCents: '600', deepCents: '800', designFeePercent: '8' },
    ...{ designFeeCredited: 'no', roundsIncluded: '1', extraRoundCents: '175', validDays: '21' },
    ...{ answerDays: '7', cancelMakingPercent: '40', cancelFinishedPercent: '90' },
    ...{ colourLimit: '2.5', terms: 'Ours.', notIncluded: '', ...plan },
  };
  done(await keepCommissionTerms(on(gallery.owner, day), keepCommissionTermsInput.parse(said)));
  const terms = await readCommissionTerms();
  expect(terms).toMatchObject({
    ...{ designFeeCredited: false, validDays: 21, colourLimit: '2.5', terms: 'Ours.' },
    basis: { hourCents: 5_000n, clayCentsPerKg: 220n, hoursPerM2: { making: '43.056' } },
    plan: [{ name: 'All of it', event: 'agreed', percent: '100', amountCents: null }],
  });
  expect((await db().gallery.findFirstOrThrow()).paperSize).toBe('a4');
});
