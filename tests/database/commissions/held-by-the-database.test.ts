import { beforeAll, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import type { Tx } from '@/lib/platform/db/transaction';
import { sha256Of } from '@/lib/commissions/reads/content';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { ruleMetBy } from '@/tests/database/sales/rule-met';
import { startAfresh } from '@/tests/helpers/database';
import { asked } from './a-commission';

// Rows written past every check of ours: each is to meet the database's own rule, by its name.

let gallery: OpenGallery;
let commissionId: string;
let other: string;
let file: { id: string; sha256: string };
const at = new Date('2026-05-12T23:00:00Z');
const hash = 'a'.repeat(64);
const body = 'Herons for the stair, 10,000.00';

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  ({ commissionId } = await asked(gallery.maker, '2026-05-12'));
  ({ commissionId: other } = await asked(gallery.maker, '2026-05-12'));
  const bytes = new TextEncoder().encode('a picture');
  const sha256 = Buffer.from(await crypto.subtle.digest('SHA-256', bytes)).toString('hex');
  const kept = { sha256, mediaType: 'image/webp', byteLength: bytes.length, bytes, createdAt: at };
  file = await db().storedFile.create({ data: kept });
});

const aSignature = (over: object = {}) => ({
  ...{ commissionId, kind: 'typed' as const, name: 'Marit Oland', contentSha256: hash, at },
  ...{ recordedById: gallery.owner.id, ...over },
});
const aSketch = (over: object = {}) => ({
  ...{ commissionId, letter: 'A', fileId: file.id, fileSha256: file.sha256 },
  ...{ contentSha256: hash, shownOn: at, at, ...over },
});
const aTile = (over: object = {}) => ({
  ...{ commissionId, number: 1, glazes: 'celadon', fileId: file.id, fileSha256: file.sha256 },
  ...{ contentSha256: hash, shownOn: at, at, ...over },
});
const aYes = (over: object) => ({
  ...{ commissionId, fileSha256: file.sha256, contentSha256: hash, approvedBy: 'Marit Oland' },
  ...{ how: 'in_person' as const, approvedOn: at, recordedById: gallery.owner.id, at, ...over },
});
const aProposal = (over: object = {}) => ({
  ...{ commissionId, version: 1, understanding: '', widthUm: 1, heightUm: 1, depthUm: 1 },
  ...{ pieces: 1, weightG: 1, buildUp: {}, areaCents: 1n, costCents: 1n, priceCents: 100n },
  ...{ taxPlaceId: gallery.taxPlaceId, taxAs: 'goods_hung' as const, roundsIncluded: 2 },
  ...{ extraRoundCents: 0n, validUntilOn: at, terms: '', body, contentSha256: sha256Of(body) },
  ...{ writtenById: gallery.owner.id, at, ...over },
});
const aLine = (amountCents: bigint) => ({
  ...{ position: 1, kind: 'work' as const, words: 'The relief', amountCents },
});
const aChange = (over: object = {}) => ({
  ...{ commissionId, number: 1, words: 'One heron more', askedBy: 'Marit Oland' },
  ...{ priceCents: 100n, body, contentSha256: sha256Of(body), offeredOn: at, at, ...over },
});
const aLink = (over: object = {}) => ({
  ...{ commissionId, tokenSha256: hash, forName: 'Marit Oland', madeById: gallery.owner.id },
  ...{ madeAt: at, runsOutAt: new Date('2026-07-12T23:00:00Z'), ...over },
});

test.each<[string, string, (tx: Tx) => Promise<unknown>]>([
  [
    'a signature that nobody saw given',
    'signature_is_given_somewhere',
    (tx) => tx.signature.create({ data: aSignature({ recordedById: null }) }),
  ],
  [
    'a drawn signature without its drawing',
    'signature_has_a_name',
    (tx) => tx.signature.create({ data: aSignature({ kind: 'drawn' }) }),
  ],
  [
    'a signature under nothing',
    'signature_names_its_bytes',
    (tx) => tx.signature.create({ data: aSignature({ contentSha256: 'x' }) }),
  ],
  [
    'a yes under other words than were signed',
    'signature_fits',
    async (tx) => {
      const sketch = await tx.sketch.create({ data: aSketch() });
      const signed = aSignature({ contentSha256: 'b'.repeat(64) });
      const { id: signatureId } = await tx.signature.create({ data: signed });
      await tx.approval.create({ data: aYes({ sketchId: sketch.id, signatureId }) });
    },
  ],
  [
    'a yes that nobody wrote down or signed',
    'approval_is_told_by_someone',
    async (tx) => {
      const sketch = await tx.sketch.create({ data: aSketch() });
      await tx.approval.create({ data: aYes({ sketchId: sketch.id, recordedById: null }) });
    },
  ],
  [
    'a second yes to the same sketch',
    'Approval_sketchId_key',
    async (tx) => {
      const { id: sketchId } = await tx.sketch.create({ data: aSketch() });
      await tx.approval.create({ data: aYes({ sketchId }) });
      await tx.approval.create({ data: aYes({ sketchId }) });
    },
  ],
  [
    'changes after the yes',
    'no_change_after_the_yes',
    async (tx) => {
      const { id: sketchId } = await tx.sketch.create({ data: aSketch() });
      await tx.approval.create({ data: aYes({ sketchId }) });
      const asks = { commissionId, sketchId, contentSha256: hash, words: 'x', askedBy: 'M' };
      const told = { how: 'in_person', askedOn: at, recordedById: gallery.owner.id, at } as const;
      await tx.changeAsked.create({ data: { ...asks, ...told } });
    },
  ],
  [
    'a colour approved on the page before its twin is in their hands',
    'colour_is_seen_in_the_hand',
    async (tx) => {
      const { id: colourTileId } = await tx.colourTile.create({ data: aTile() });
      const { id: signatureId } = await tx.signature.create({ data: aSignature() });
      const yes = aYes({ colourTileId, how: 'on_their_page', signatureId });
      await tx.approval.create({ data: yes });
    },
  ],
  [
    'a spot beside the picture',
    'area_is_in_the_picture',
    async (tx) => {
      const { id: sketchId } = await tx.sketch.create({ data: aSketch() });
      const area = { sketchId, position: 1, name: 'Sky', xPermille: 1001, yPermille: 0 };
      await tx.sketchArea.create({ data: area });
    },
  ],
  [
    'half a measured colour',
    'shade_is_measured_whole',
    async (tx) => {
      const { id: tileId } = await tx.colourTile.create({ data: aTile() });
      await tx.colourTileShade.create({ data: { tileId, shade: 'light', lStar: 50 } });
    },
  ],
  [
    'a proposal under other words',
    'proposal_is_named_by_its_words',
    (tx) => tx.proposal.create({ data: aProposal({ contentSha256: hash }) }),
  ],
  [
    'a proposal whose lines come to something else',
    'lines_come_to_the_price',
    (tx) => tx.proposal.create({ data: { ...aProposal(), lines: { create: aLine(99n) } } }),
  ],
  [
    'a change order under other words',
    'change_order_is_named_by_its_words',
    (tx) => tx.changeOrder.create({ data: aChange({ contentSha256: hash }) }),
  ],
  [
    'a change order that is signed after it was withdrawn',
    'change_order_has_one_end',
    async (tx) => {
      const { id: changeOrderId } = await tx.changeOrder.create({ data: aChange() });
      const staffId = gallery.owner.id;
      await tx.changeOrderWithdrawn.create({ data: { changeOrderId, why: 'No', staffId, at } });
      const signed = aSignature({ contentSha256: sha256Of(body) });
      const { id: signatureId } = await tx.signature.create({ data: signed });
      const data = { changeOrderId, signatureId, signedOn: at, at };
      await tx.changeOrderSigned.create({ data });
    },
  ],
  [
    'a link that has run out before it was made',
    'link_runs_out',
    (tx) => tx.collectorLink.create({ data: aLink({ runsOutAt: at }) }),
  ],
  [
    'a link that was withdrawn and comes to life again',
    'link_stays_shut',
    async (tx) => {
      const { id } = await tx.collectorLink.create({ data: aLink({ withdrawnAt: at }) });
      await tx.collectorLink.update({ where: { id }, data: { withdrawnAt: null } });
    },
  ],
  [
    'a link that leads to another commission',
    'link_stays_shut',
    async (tx) => {
      const { id } = await tx.collectorLink.create({ data: aLink() });
      await tx.collectorLink.update({ where: { id }, data: { commissionId: other } });
    },
  ],
  [
    'a changed word in what was written of the making',
    'progress_stays',
    async (tx) => {
      const told = { commissionId, kind: 'note' as const, words: 'Carved', on: at, at };
      const { id } = await tx.progress.create({ data: { ...told, staffId: gallery.owner.id } });
      await tx.progress.update({ where: { id }, data: { shared: true } });
      await tx.progress.update({ where: { id }, data: { words: 'Not carved' } });
    },
  ],
  [
    'a notice of delay that moves nothing',
    'delay_says_why',
    (tx) =>
      tx.delayNotice.create({
        data: {
          ...{ commissionId, fromOn: at, toOn: at, clock: 'kiln', why: 'An element broke' },
          ...{ toldHow: 'by telephone', toldOn: at, staffId: gallery.owner.id, at },
        },
      }),
  ],
  [
    'deposits used that were never paid',
    'deposit_used_once',
    (tx) =>
      tx.journalEntry.create({
        data: {
          ...{ on: at, at, memo: 'x', paper: 'Commission', paperId: commissionId },
          postings: {
            create: [
              { accountCode: '2000', amountCents: 1n, commissionId },
              { accountCode: '4060', amountCents: -1n },
            ],
          },
        },
      }),
  ],
  [
    'a collector merged into themselves',
    'collector_is_not_merged_into_itself',
    async (tx) => {
      const { id } = await tx.collector.create({ data: { name: 'Marit', createdAt: at } });
      await tx.collector.update({ where: { id }, data: { mergedIntoId: id } });
    },
  ],
  [
    'a collector merged into one that was merged before',
    'merged_into_a_living_one',
    async (tx) => {
      const a = await tx.collector.create({ data: { name: 'A', createdAt: at } });
      const b = { name: 'B', createdAt: at, mergedIntoId: a.id };
      const { id } = await tx.collector.create({ data: b });
      await tx.collector.create({ data: { name: 'C', createdAt: at, mergedIntoId: id } });
    },
  ],
])('%s meets %s', async (_what, rule, work) => {
  expect(await ruleMetBy(work)).toBe(rule);
});
