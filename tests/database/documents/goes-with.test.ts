import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { careSheetPdf } from '@/lib/documents/goes-with/care-sheet';
import { certificatePdf, type Certificate } from '@/lib/documents/goes-with/certificate';
import type { CareAbout } from '@/lib/documents/rules/goes-with/care';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { openGallery } from '@/tests/database/sales/open-gallery';
import { startAfresh } from '@/tests/helpers/database';
import { readPaper } from '@/tests/helpers/paper-text';

let settings: Gallery;

beforeAll(async () => {
  await startAfresh();
  await openGallery();
  settings = await getGallery();
});

const told: Certificate = {
  said: {
    ...{ title: 'Nine herons', artist: 'Oriel Sandray', year: 2027, size: '84 × 40 in' },
    ...{ medium: 'stoneware, celadon over iron slip', weight: '', owner: 'Marit Oland' },
  },
  many: { kind: 'one' },
  ...{ known: 'commission 8', agreedOn: '2026-05-04', on: '2027-03-02', picture: null },
};

describe.each([
  ['letter', 612, 792],
  ['a4', 595, 842],
] as const)('on %s', (paperSize, width, height) => {
  test('a certificate is one page that says what is known and leaves off what is not', async () => {
    const paper = await readPaper(await certificatePdf(told, { ...settings, paperSize }));
    expect([Math.round(paper.width), Math.round(paper.height)]).toEqual([width, height]);
    expect([paper.pages, paper.fontsInside]).toEqual([1, true]);
    for (const words of [
      ...['Certificate of authenticity', 'Nine herons', 'Oriel Sandray, 2027', '84 × 40 in'],
      ...['One of a kind.', 'commission 8', '4 May 2026', 'Marit Oland', '© 2027 Oriel Sandray'],
    ]) {
      expect(paper.text).toContain(words);
    }
    expect(paper.text).not.toContain('Weight');
  });

  test('a certificate stays on one page with a picture and much to say', async () => {
    const picture = await sharp({
      create: { width: 900, height: 1_200, channels: 3, background: '#718f7c' },
    })
      .jpeg()
      .toBuffer();
    const long = 'stoneware, celadon over iron slip, three coats, fired to cone 6; '.repeat(3);
    const said = { ...told.said, title: 'Nine herons '.repeat(9), medium: long, weight: '96 lb' };
    const edition = { size: 50, artistProofs: 3, statedOn: '2026-03-01', came: 12 } as const;
    const many = { kind: 'edition', number: 7, edition } as const;
    const bytes = await certificatePdf(
      { ...told, said, many, picture },
      { ...settings, paperSize },
    );
    const paper = await readPaper(bytes);
    expect(paper.pages).toBe(1);
    expect(paper.text).toContain('Given on');
  });

  test('a care sheet is one page and says whom to call', async () => {
    const about: CareAbout = {
      ...{ kind: 'platter', foodUse: 'not_proven', exposure: null },
      ...{ isSetInWall: false, weightG: 1_800 },
    };
    const sheet = { title: 'Shoal', what: 'platter, tenmoku', known: 'PL-14-TE', about };
    const paper = await readPaper(await careSheetPdf(sheet, { ...settings, paperSize }));
    expect([Math.round(paper.width), paper.pages, paper.fontsInside]).toEqual([width, 1, true]);
    expect(paper.text).toContain('NOT FOR FOOD USE. MAY POISON FOOD.');
    expect(paper.text).toContain('Say the name of the piece and “PL-14-TE”');
    expect(paper.text).toContain(settings.name);
  });
});
