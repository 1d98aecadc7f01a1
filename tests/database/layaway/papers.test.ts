import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { approvalSlipPdf } from '@/lib/documents/approval-slip';
import { holdSlipPdf } from '@/lib/documents/hold-slip';
import { layawayStatementPdf } from '@/lib/documents/layaway-statement';
import { giveInput } from '@/lib/holds/input/approval';
import { findApproval } from '@/lib/holds/reads/approvals';
import { findHold, listHolds } from '@/lib/holds/reads/hold-list';
import { giveOnApproval } from '@/lib/holds/writes/approvals';
import { findLayaway } from '@/lib/layaway/reads';
import { getGallery } from '@/lib/platform/settings';
import { startAfresh } from '@/tests/helpers/database';
import { doing, noon, openGallery, type OpenGallery } from '../sales/open-gallery';
import { aLayaway, aPanelAndSomebody, pay } from './a-layaway';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

function isPaper(bytes: Uint8Array): boolean {
  const text = Buffer.from(bytes).toString('latin1');
  return text.startsWith('%PDF-') && text.includes('/Lang (en-US)');
}

test('a layaway has its statement, and its pieces a slip', async () => {
  const { layawayId, number } = await aLayaway(gallery);
  await pay(gallery, doing(gallery.clerk), layawayId, 12_960n);
  const layaway = await findLayaway(gallery.clerk, number, '2026-11-20');
  if (!layaway) throw new Error('What was begun is found.');
  const settings = await getGallery();
  expect(isPaper(await layawayStatementPdf(layaway, settings))).toBe(true);

  const { others } = await listHolds(gallery.clerk, noon);
  const hold = others.find((each) => each.layawayNumber === number);
  expect(hold).toMatchObject({ standing: 'with_its_paper', untilAt: null });
  const found = hold && (await findHold(gallery.clerk, hold.number, noon));
  if (!found) throw new Error('What was put away is held.');
  expect(isPaper(await holdSlipPdf(found, settings))).toBe(true);
});

test('pieces on approval have a slip to sign', async () => {
  const { panel, collectorId } = await aPanelAndSomebody(gallery);
  const typed = { requestKey: randomUUID(), collectorId, pieces: panel.sku, value: '480' };
  const given = await giveOnApproval(
    doing(gallery.clerk),
    giveInput.parse({ ...typed, dueOn: '2026-11-27' }),
  );
  if (!given.ok) throw new Error(given.refusal.code);
  const approval = await findApproval(gallery.clerk, given.value.number);
  if (!approval) throw new Error('What was given has its slip.');
  expect(isPaper(await approvalSlipPdf(approval, await getGallery()))).toBe(true);
});
