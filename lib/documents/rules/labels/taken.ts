import { labelSheet, type LabelSheetKey } from './sheets';
import { cautionFor, type LabelPiece } from './words';

/** From this height in points on, a caution stands on the label itself; below it on its own. */
const roomyHeight = 130;

/** Whether a caution stands on the label itself. */
export function hasRoomForCaution(sheet: LabelSheetKey): boolean {
  return labelSheet(sheet).height >= roomyHeight;
}

/** How many labels a piece takes: two where its caution stands on one of its own. */
export function labelsTaken(
  piece: Pick<LabelPiece, 'kind' | 'foodUse'>,
  sheet: LabelSheetKey,
): number {
  return cautionFor(piece) !== null && !hasRoomForCaution(sheet) ? 2 : 1;
}
