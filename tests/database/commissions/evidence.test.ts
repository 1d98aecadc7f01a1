import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Actor } from '@/lib/access/rules';
import { keepProgressInput } from '@/lib/commissions/input/course-told';
import { showColourTileInput } from '@/lib/commissions/input/colours/showing';
import { readEvidence } from '@/lib/commissions/reads/evidence/evidence';
import { findSheet } from '@/lib/commissions/reads/sheet';
import { marksOf } from '@/lib/commissions/rules/evidence/chapters';
import { showColourTile } from '@/lib/commissions/writes/colours/show';
import { keepProgress } from '@/lib/commissions/writes/course/progress';
import { takePayment } from '@/lib/commissions/writes/money';
import { evidencePdf } from '@/lib/documents/commissions/evidence';
import { readPaperPicture } from '@/lib/documents/reads/pictures';
import { getGallery } from '@/lib/platform/settings';
import { openGallery, type OpenGallery } from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { readPaper } from '@/tests/helpers/paper-text';
import { aPayment, aPicture, done, on, readyForClay, sketched, tiled } from './a-commission';
import { agreedByProposal, agreedOn, changeOffered, signChange } from './an-agreement';

let gallery: OpenGallery;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

/** The evidence of a commission as somebody sees it. */
async function evidenceOf(number: number, actor: Actor = gallery.owner) {
  const sheet = await findSheet(actor, number);
  if (!sheet) throw new Error('It is there.');
  return readEvidence(actor, sheet);
}

const named: Readonly<Record<string, string>> = {
  ...{ Agreement: 'agreement_is_named_by_its_words', Proposal: 'proposal_is_named_by_its_words' },
  ...{
    ChangeOrder: 'change_order_is_named_by_its_words',
    StoredFile: 'file_is_named_by_its_bytes',
  },
};

/** As somebody would who has the database in their hands, takes away what guards it, and writes. */
async function behindOurBack(table: string, statement: string): Promise<void> {
  const guard = named[table];
  if (guard) await sql(`ALTER TABLE "${table}" DROP CONSTRAINT IF EXISTS ${guard}`);
  await sql(`ALTER TABLE "${table}" DISABLE TRIGGER USER`);
  const written = await sql(`${statement} RETURNING id`);
  expect(written).toHaveLength(1);
  await sql(`ALTER TABLE "${table}" ENABLE TRIGGER USER`);
}

async function whole() {
  const made = await agreedByProposal(gallery);
  const { commissionId } = made;
  const change = await changeOffered(gallery, commissionId);
  done(await signChange(on(gallery.owner, agreedOn), change));
  const sketch = await sketched(gallery.maker, commissionId, agreedOn);
  const tile = await tiled(gallery.maker, commissionId, agreedOn);
  done(await takePayment(on(gallery.clerk, agreedOn), aPayment(commissionId, 100_000n)));
  return { ...made, sketch, tile };
}

test('holds every chapter, and every mark fits', async () => {
  const { number } = await whole();
  const chapters = await evidenceOf(number);
  expect(chapters.map(({ title, entries }) => [title, entries.length])).toEqual([
    ['What was asked', 1],
    ['Proposals', 1],
    ['Agreement and changes', 2],
    ['Sketches and colours', 2],
    ['What was said of the day', 2],
    ['The making and the hanging', 0],
    ['Money', 1],
    ['The hand-over', 0],
  ]);
  expect(marksOf(chapters)).toEqual({ all: 5, broken: [] });
});

test('a colour that was measured keeps its mark however many places it was typed with', async () => {
  const { commissionId, number } = await agreedByProposal(gallery);
  const form = showColourTileInput.parse({
    ...{ requestKey: randomUUID(), commissionId, picture: await aPicture(90) },
    ...{ glazes: 'celadon', shownOn: agreedOn, middle: '52.1 -3.40 8' },
  });
  done(await showColourTile(on(gallery.maker, agreedOn), form));
  const chapters = await evidenceOf(number);
  expect(chapters.flatMap(({ entries }) => entries).flatMap(({ lines }) => lines)).toContain(
    'middle: L* 52.1, a* -3.4, b* 8 under D50',
  );
  expect(marksOf(chapters).broken).toEqual([]);
});

describe('what was changed behind our back does not fit its mark', () => {
  test.each([
    [
      'the words of an agreement',
      'Agreement',
      'Agreement',
      (id: string) =>
        `UPDATE "Agreement" SET body = body || ' and a bench' WHERE "commissionId" = '${id}'`,
    ],
    [
      'the words of a change order',
      'Change order 1',
      'ChangeOrder',
      (id: string) =>
        `UPDATE "ChangeOrder" SET body = body || ' for nothing' WHERE "commissionId" = '${id}'`,
    ],
    [
      'the words of a proposal',
      'Proposal 1',
      'Proposal',
      (id: string) => `UPDATE "Proposal" SET body = body || '.' WHERE "commissionId" = '${id}'`,
    ],
    [
      'the glazes of a tile',
      'Colour tile 1',
      'ColourTile',
      (id: string) => `UPDATE "ColourTile" SET glazes = 'tenmoku' WHERE "commissionId" = '${id}'`,
    ],
    [
      'the bytes of a sketch',
      'Sketch A',
      'StoredFile',
      (id: string) =>
        `UPDATE "StoredFile" SET bytes = bytes || '\\x00' WHERE id = (SELECT "fileId" FROM "Sketch" WHERE "commissionId" = '${id}')`,
    ],
  ])('%s', async (_label, title, table, statement) => {
    const { commissionId, number } = await whole();
    await behindOurBack(table, statement(commissionId));
    expect(marksOf(await evidenceOf(number)).broken).toEqual([title]);
  });
});

test('who sees no money reads no price in it', async () => {
  const { number } = await whole();
  const chapters = await evidenceOf(number, gallery.maker);
  expect(chapters.map(({ title }) => title)).not.toContain('Money');
  expect(JSON.stringify(chapters)).not.toMatch(/\$\d/);
});

test('is one file with thirty pictures, its contents naming the page of each chapter', async () => {
  const { commissionId, number } = await readyForClay(gallery, agreedOn);
  for (let at = 0; at < 30; at += 1) {
    const picture = await aPicture(at * 7);
    const form = { requestKey: randomUUID(), commissionId, kind: 'picture', on: agreedOn };
    const kept = keepProgressInput.parse({ ...form, picture, words: `Part ${at + 1} is cut` });
    done(await keepProgress(on(gallery.maker, agreedOn), kept));
  }
  const chapters = await evidenceOf(number);
  const shown = chapters.flatMap(({ entries }) => entries.flatMap(({ pictures }) => pictures));
  const pictures = new Map<string, Uint8Array>();
  for (const { fileId } of shown) {
    const bytes = await readPaperPicture(fileId);
    if (bytes) pictures.set(fileId, bytes);
  }
  expect(pictures.size).toBe(32);
  const file = { work: 'Herons for the stair', collector: 'Marit Oland', chapters, pictures };
  const about = { ...file, commissionNumber: number, on: agreedOn } as const;
  const settings = await getGallery();
  const [letter, a4] = [
    await readPaper(await evidencePdf(about, { ...settings, paperSize: 'letter' })),
    await readPaper(await evidencePdf(about, { ...settings, paperSize: 'a4' })),
  ];
  expect([letter.fontsInside, a4.fontsInside]).toEqual([true, true]);
  expect([letter.width, Math.round(a4.width)]).toEqual([612, 595]);
  expect(letter.text).toContain('Part 30 is cut');
  expect(letter.text).toContain('The making and the hanging: 30');
  expect(letter.text).toContain('SHA-256');
});
