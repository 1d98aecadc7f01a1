import localFont from 'next/font/local';

/** The serif: titles, captions, the names of works. Alegreya, SIL Open Font Licence. */
export const serif = localFont({
  src: [
    { path: './web/alegreya-latin-400-normal.woff2', weight: '400', style: 'normal' },
    { path: './web/alegreya-latin-400-italic.woff2', weight: '400', style: 'italic' },
    { path: './web/alegreya-latin-600-normal.woff2', weight: '600', style: 'normal' },
  ],
  variable: '--face-serif',
  display: 'swap',
  adjustFontFallback: 'Times New Roman',
});

/** The sans one works with; its figures are lining and tabular. Source Sans 3, SIL OFL. */
export const sans = localFont({
  src: [
    { path: './web/source-sans-3-latin-400-normal.woff2', weight: '400', style: 'normal' },
    { path: './web/source-sans-3-latin-600-normal.woff2', weight: '600', style: 'normal' },
  ],
  variable: '--face-sans',
  display: 'swap',
  adjustFontFallback: 'Arial',
});

/** The serif's letters for names such as Dvořák; fetched only when a page has such a letter. */
export const serifFar = localFont({
  src: [
    { path: './web/alegreya-latin-ext-400-normal.woff2', weight: '400', style: 'normal' },
    { path: './web/alegreya-latin-ext-400-italic.woff2', weight: '400', style: 'italic' },
    { path: './web/alegreya-latin-ext-600-normal.woff2', weight: '600', style: 'normal' },
  ],
  variable: '--face-serif-far',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0100-02FF, U+1E00-1EFF, U+2C60-2C7F' }],
});

/** The sans's letters for the same names. */
export const sansFar = localFont({
  src: [
    { path: './web/source-sans-3-latin-ext-400-normal.woff2', weight: '400', style: 'normal' },
    { path: './web/source-sans-3-latin-ext-600-normal.woff2', weight: '600', style: 'normal' },
  ],
  variable: '--face-sans-far',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
  declarations: [{ prop: 'unicode-range', value: 'U+0100-02FF, U+1E00-1EFF, U+2C60-2C7F' }],
});
