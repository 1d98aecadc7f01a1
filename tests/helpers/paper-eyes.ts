import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

const find = createRequire(import.meta.url);

/** A page of a PDF as grey pixels: one byte each, 0 black to 255 white. */
export type SeenPage = { width: number; height: number; grey: Uint8Array };

/** Renders each page of a PDF with a renderer that shares nothing with what wrote it. */
export async function seePages(bytes: Uint8Array, dotsPerInch = 300): Promise<SeenPage[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const pages: SeenPage[] = [];
  for (const page of document.pages()) {
    const seen = await page.render({ scale: dotsPerInch / 72, render: 'bitmap' });
    const grey = new Uint8Array(seen.width * seen.height);
    for (let at = 0; at < grey.length; at += 1) grey[at] = seen.data[at * 4 + 1] ?? 255;
    pages.push({ width: seen.width, height: seen.height, grey });
  }
  document.destroy();
  library.destroy();
  return pages;
}

let isReady = false;

/** Reads every code on a page with a decoder that shares nothing with what drew it. */
export async function readCodes(
  page: SeenPage,
): Promise<{ format: string; text: string; x: number; y: number }[]> {
  if (!isReady) {
    const wasmBinary = new Uint8Array(
      readFileSync(find.resolve('zxing-wasm/reader/zxing_reader.wasm')),
    ).buffer;
    await prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true });
    isReady = true;
  }
  const { width, height, grey } = page;
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (const [at, light] of grey.entries()) data.fill(light, at * 4, at * 4 + 3);
  const found = await readBarcodes(
    { data, width, height, colorSpace: 'srgb' },
    { formats: ['QRCode', 'Code128'], tryHarder: true, maxNumberOfSymbols: 255 },
  );
  return found.map(({ format, text, position }) => ({
    ...{ format, text, x: position.topLeft.x, y: position.topLeft.y },
  }));
}
