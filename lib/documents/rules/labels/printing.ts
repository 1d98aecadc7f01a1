import type { LabelSheetKey } from './sheets';
import type { LabelKind } from './words';

/** Which codes a label carries. */
export const labelCodes = ['qr', 'bars', 'both', 'none'] as const;

/** How labels are printed. */
export type LabelPrint = {
  kind: LabelKind;
  sheet: LabelSheetKey;
  codes: (typeof labelCodes)[number];
  /** On which label of the first sheet it begins, from 1. */
  firstAt: number;
};
