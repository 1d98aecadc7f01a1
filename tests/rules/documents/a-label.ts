import type { LabelGallery, LabelPiece } from '@/lib/documents/rules/labels/words';

/** A gallery as labels tell it. */
export const labelGallery: LabelGallery = {
  ...{ name: 'Tidewrack Clay', phone: '(555) 010-0100', lengthUnit: 'in' },
};

/** A relief tile as its label tells it. */
export function aLabel(over: Partial<LabelPiece> = {}): LabelPiece {
  return {
    ...{ sku: 'TS-10-CI', number: null, title: 'Tern over Shoals', kind: 'relief_tile' },
    ...{ colourway: 'celadon over iron slip', widthUm: 254_000, heightUm: 254_000 },
    ...{ depthUm: null, weightG: 2_400, priceCents: 18_000n, making: 'open_stock' },
    ...{ editionSize: null, grade: 'first', flaw: '', foodUse: 'not_proven' },
    ...{ madeInYear: 2026, medium: '' },
    ...over,
  };
}
