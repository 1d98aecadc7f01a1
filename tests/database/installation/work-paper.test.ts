import { beforeAll, expect, test } from 'vitest';
import { workOrderPdf } from '@/lib/documents/installation/work-order';
import { findWorkOrder } from '@/lib/installation/reads/work/order';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { done } from '@/tests/database/commissions/a-commission';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { readPaper } from '@/tests/helpers/paper-text';
import { aPiece, anAppointment, aTick, hungOn, send } from './a-day';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

async function paperOf(id: string) {
  const settings = await getGallery();
  const order = await findWorkOrder(gallery.maker, id, { gallery: settings, today: hungOn });
  if (!order) throw new Error('There is no such appointment.');
  return readPaper(await workOrderPdf(order, settings));
}

test('the work order of a hanging is one page, and says what to know without the codes', async () => {
  const id = await anAppointment(gallery, await aPiece(gallery));
  const told = {
    meets: 'Marit Oland, 555 0117',
    prepares: 'The sofa moved, the wall painted a week before',
    fallBack: 'The Thursday after, if it rains',
    note: 'The dog is kind',
  };
  await db().appointment.update({ where: { id }, data: told });
  done(await send(aTick(id, gallery.maker, 'tools_loaded'), gallery.maker));
  const { pages, text } = await paperOf(id);
  expect(pages).toBe(1);
  for (const words of [...Object.values(told), '4 Ropewalk Lane', 'Tobias Fenn, alone']) {
    expect(text).toContain(words);
  }
  expect(text).toContain('There is no plan of the fixings');
  expect(text).toContain('licensed contractor decide');
  expect(text).not.toContain('4711');
});

test('a fetching has fewer ticks, and no wall', async () => {
  const { text } = await paperOf(await anAppointment(gallery, await aPiece(gallery), 'fetching'));
  expect(text).toContain('The parts were counted');
  expect(text).not.toContain('cleat');
  expect(text).not.toContain('How it hangs');
});
