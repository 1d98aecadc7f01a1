import 'server-only';
import type { Template } from '@/lib/clay/rules/template';
import { labelSpot } from '@/lib/studio/rules/parts/label';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import { ash, type Paper } from '../paper';

/** The sizes between which the number of a part is written, in points. */
const [leastSize, mostSize] = [6, 30];

/**
 * The numbered parts of a relief on a template: each outline and its number, in wet size times
 * `scale`, from the upper left of the outline of the whole.
 *
 * @param scale points for a micrometre
 */
export function drawPartLines(
  paper: Paper,
  template: Template,
  { shapes, scale }: { shapes: readonly Shape[]; scale: number },
): void {
  const wide = (template.wetWidthUm * scale) / 1000;
  const high = (template.wetHeightUm * scale) / 1000;
  const aspect = template.wetHeightUm / template.wetWidthUm;
  for (const { outline, number } of shapes) {
    const corners = outline.map(([x, y]): [number, number] => [x * wide, y * high]);
    paper.polygon(...corners).stroke();
    const { at, room } = labelSpot(outline, aspect);
    const size = Math.min(mostSize, room * wide * 0.8);
    if (size < leastSize) continue;
    paper.font('sans').fontSize(size).fillColor(ash);
    const x = at[0] * wide - paper.widthOfString(String(number)) / 2;
    paper.text(String(number), x, at[1] * high - size * 0.6, { lineBreak: false });
  }
}
