import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { claimCoverPdf } from '@/lib/documents/sending/claim-cover';
import { conditionReportPdf } from '@/lib/documents/sending/condition-report';
import { numbersWords } from '@/lib/documents/sending/head';
import { crateLabelsPdf } from '@/lib/documents/sending/labels';
import { packingListPdf } from '@/lib/documents/sending/packing-list';
import { receivingSlipPdf } from '@/lib/documents/sending/receiving-slip';
import type { Gallery } from '@/lib/platform/settings';
import type { ShipmentTold } from '@/lib/sending/reads/shipments';
import type { BoxKept } from '@/lib/sending/reads/stored';
import type { ClaimTold, ReportTold } from '@/lib/sending/reads/told';
import { readPaper } from '@/tests/helpers/paper-text';

const gallery: Gallery = {
  ...{ name: 'Tidewrack Clay', tagline: '', street: '14 Alder Slip', city: 'Cedar Landing' },
  ...{ state: 'WA', postcode: '98000', phone: '555 0100', email: 'door@tidewrack.example' },
  ...{ timeZone: 'America/Los_Angeles', currency: 'USD', lengthUnit: 'in', returnTerms: '' },
  ...{ roundTaxBy: 'invoice', isDemo: false, taxPlaceId: '', counterId: '', returnDays: 14 },
  ...{ staffDiscountPercent: '10', restockingFeePercent: '0', holdHours: 48, approvalDays: 7 },
  ...{ layawayDownPercent: '25', layawayDays: 90, layawayTerms: '', drawerFloatCents: 0n },
  ...{ paperSize: 'letter', eyeHeightUm: 1_450_000, hangSafetyPercent: 300, fixingsLookMonths: 12 },
};

const box = (position: number, over: Partial<BoxKept> = {}): BoxKept => ({
  ...{ id: String(position), position, kind: 'crate', paddingUm: 50_800, note: '' },
  ...{ lengthUm: 1_016_000, widthUm: 762_000, heightUm: 254_000, reckonedG: 30_000, scaleG: null },
  contents: [
    { id: 'a', pieces: 1, words: 'Part 1, sky', partNumber: 1, weightG: 4_000, layer: 1 },
    { id: 'b', pieces: 1, words: 'Part 2, reeds', partNumber: 2, weightG: 4_000, layer: 2 },
  ],
  ...over,
});

const shipment: ShipmentTold = {
  ...{ id: 's', number: 7, how: 'carrier', carrier: 'Coast freight', commissionId: null },
  ...{ saleId: null, collectorId: null, toName: 'Marit Oland', toPhone: '555 0148', note: '' },
  ...{ toAddress: '220 Heron Reach Road\nFernhollow, WA', insuredBy: 'our insurer' },
  ...{ insuredCents: 987_654n, madeById: 'm', madeBy: 'Ines Vale', at: new Date(0) },
  terms: {
    ...{ id: 't', name: 'Freight', divisorIn3: null, sides: 'up', overIn3: 0, isFreight: true },
    ...{ reportDays: 5, claimDays: 270, coverCents: 0n, holdsFromOn: '2026-01-01', source: '' },
  },
  forWhat: { commission: { number: 12, title: 'Fern bank' }, sale: null, collector: null },
  boxes: [box(1, { scaleG: 66_000 }), box(2, { contents: [] })],
  ...{ stage: 'on_the_way', tracking: 'CV 44', reports: [], claims: [], opening: null },
  events: [
    {
      ...{ kind: 'sent', on: '2026-11-12', tracking: 'CV 44', takenBy: '', words: '' },
      ...{ drawingId: null, staffId: 'm', by: 'Tobias Fenn', at: new Date(0) },
    },
  ],
};

const today = '2026-11-20';
const papers = {
  labels: () => crateLabelsPdf(shipment, gallery),
  'packing list': () => packingListPdf(shipment, gallery),
  'receiving slip': () => receivingSlipPdf(shipment, { gallery, today }),
};

describe('papers that travel with it', () => {
  test.each(Object.entries(papers))('%s: no value, our type, and for whom', async (_name, make) => {
    const paper = await readPaper(await make());
    expect(paper.text).not.toMatch(/9,?876|\$/);
    expect(paper.text).toContain('Marit Oland');
    expect(paper.fontsInside).toBe(true);
  });

  test('a label for each box: n of N, both telephones, its weight, and how it is handled', async () => {
    const { text, pages } = await readPaper(await papers.labels());
    expect(pages).toBe(2);
    for (const words of [
      ...[
        '1 of 2',
        '2 of 2',
        '146 lb',
        'gross, by the scale',
        '66 lb',
        'gross, about',
        'parts 1–2',
      ],
      ...['FRAGILE', 'CERAMIC', 'THIS FACE UP', 'THREE PEOPLE OR A LIFT', 'TWO PEOPLE'],
      ...['MARKED SCREWS', '555 0100', '555 0148', 'commission 12', 'CV 44'],
    ]) {
      expect(text).toContain(words);
    }
  });

  test('a long name and address stay on the label', async () => {
    const toName = 'The board of trustees of the '.repeat(4).trim();
    const toAddress = Array.from({ length: 9 }, (_, at) => `Line ${at} of the address`).join('\n');
    const bytes = await crateLabelsPdf({ ...shipment, toName, toAddress }, gallery);
    const { pages, text } = await readPaper(bytes);
    expect(pages).toBe(2);
    expect(text).toContain('Line 8 of the address');
  });

  test('the packing list tells what comes out first', async () => {
    const { text } = await readPaper(await papers['packing list']());
    expect(text).toContain('2 boxes, parts 1–2');
    expect(text.indexOf('Part 2, reeds')).toBeLessThan(text.indexOf('Part 1, sky'));
    expect(text).toContain('Box 2 of 2: crate');
  });

  test('the slip says by when: so many days while it is on the way, the day once it came', async () => {
    const before = await readPaper(await papers['receiving slip']());
    expect(before.text).toContain('within 5 days after it came');
    expect(before.text).toContain('After Monday 9 August 2027 nothing can be claimed');
    const [sent] = shipment.events;
    const arrived = { kind: 'arrived', on: '2026-11-18' } as const;
    const events = sent ? [sent, { ...sent, ...arrived }] : [];
    const came: ShipmentTold = { ...shipment, stage: 'arrived', events };
    const after = await readPaper(await receivingSlipPdf(came, { gallery, today }));
    expect(after.text).toContain('by Monday 23 November 2026');
  });
});

describe('papers that stay', () => {
  const report: ReportTold = {
    ...{ id: 'r', when: 'in', words: 'Two chips.', on: '2026-11-18', by: 'Ines Vale' },
    at: new Date(0),
    views: [
      {
        ...{ id: 'v', fileId: 'f', width: 600, height: 400, caption: '' },
        marks: [
          { x: 0, y: 0, words: 'a chip in the corner' },
          { x: 1000, y: 1000, words: 'glaze scratched' },
        ],
      },
    ],
  };

  test('a condition report has each mark by its number, and a picture that is gone is left out', async () => {
    const picture = new Uint8Array(
      await sharp({ create: { width: 600, height: 400, channels: 3, background: 'teal' } })
        .jpeg()
        .toBuffer(),
    );
    const { text } = await readPaper(
      await conditionReportPdf({ shipment, report, pictures: [picture] }, gallery),
    );
    expect(text).toContain('Condition, as it came');
    expect(text).toContain('1. a chip in the corner');
    expect(text).toContain('2. glaze scratched');
    const without = await conditionReportPdf({ shipment, report, pictures: [null] }, gallery);
    expect((await readPaper(without)).text).not.toContain('Picture 1');
  });

  test('the cover of a claim has its days, its worth and what came of it', async () => {
    const claim: ClaimTold = {
      ...{ id: 'c', number: 3, foundOn: '2026-11-18', words: 'Part 2 broken', by: 'Ines Vale' },
      ...{ askedCents: 62_000n, reportByOn: '2026-11-23', claimByOn: '2027-08-09' },
      ...{ stage: 'to_claim', pictures: [] },
      events: [
        { kind: 'told', on: '2026-11-18', amountCents: 0n, words: 'by telephone', by: 'Ines Vale' },
      ],
    };
    const { text } = await readPaper(
      await claimCoverPdf({ shipment, claim, pictures: [] }, gallery),
    );
    for (const words of [
      'Claim 3',
      '23 Nov 2026',
      '$620.00',
      '$9,876.54',
      'by telephone',
      'CV 44',
    ]) {
      expect(text).toContain(words);
    }
  });
});

test.each([
  [[], ''],
  [[7], '7'],
  [[3, 1, 2, 7, 7], '1–3, 7'],
])('%j in a row is told as %s', (numbers, words) => {
  expect(numbersWords(numbers)).toBe(words);
});
