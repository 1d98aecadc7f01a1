import { PDFiumLibrary } from '@hyzyla/pdfium';

/** A PDF as a reader that shares nothing with what wrote it finds it. */
export type ReadPaper = {
  /** The text that can be selected, one page after the other, with every run of blanks as one. */
  text: string;
  pages: number;
  /** The size of the first page, in points. */
  width: number;
  height: number;
  /** Whether every font that is named is in the file. */
  fontsInside: boolean;
};

/** Reads what a PDF says, and how large its page is. */
export async function readPaper(bytes: Uint8Array): Promise<ReadPaper> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const pages = [...document.pages()];
  // A hyphen at which a line breaks is read as U+FFFE.
  const text = pages.map((page) => page.getText().replaceAll('\uFFFE', '-')).join(' ');
  const { originalWidth: width = 0, originalHeight: height = 0 } =
    pages[0]?.getOriginalSize() ?? {};
  document.destroy();
  library.destroy();
  const raw = Buffer.from(bytes).toString('latin1');
  const named = raw.match(/\/Type \/FontDescriptor/g)?.length ?? 0;
  const inside = raw.match(/\/FontFile[23]? \d+ 0 R/g)?.length ?? 0;
  const fontsInside = named > 0 && named === inside;
  return {
    text: text.replace(/\s+/g, ' '),
    pages: pages.length,
    ...{ width, height, fontsInside },
  };
}
