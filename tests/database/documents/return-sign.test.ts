import { beforeAll, expect, test } from 'vitest';
import { returnSignPdf } from '@/lib/documents/counter/return-sign';
import { getGallery } from '@/lib/platform/settings';
import { openGallery } from '@/tests/database/sales/open-gallery';

beforeAll(async () => {
  await openGallery();
});

test('the sign for the counter is a page with the terms of the gallery', async () => {
  const gallery = await getGallery();
  const written = await returnSignPdf(gallery);
  expect(Buffer.from(written.subarray(0, 5)).toString()).toBe('%PDF-');
  const bare = await returnSignPdf({ ...gallery, returnTerms: '', returnDays: 0 });
  expect(bare.length).not.toBe(written.length);
});
