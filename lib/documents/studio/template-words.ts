import 'server-only';
import type { Template, TemplateSheet } from '@/lib/clay/rules/template';
import { formatSize, type LengthSystem } from '@/lib/units/rules';

/** What a template’s pages say besides its measures. */
export type TemplateTold = {
  readonly title: string;
  readonly gallery: string;
  readonly lengthUnit: LengthSystem;
};

/** What keeps a template from being taken for the finished size: `WET, for clay that shrinks 12%`. */
export function wetWords({ asked }: Template): string {
  return `WET, for clay that shrinks ${asked.shrinkagePercent}%`;
}

/** The size that the template is not: `Fired 12 × 18 in`. */
export function firedWords({ asked }: Template, told: TemplateTold): string {
  const fired = { widthUm: asked.firedWidthUm, heightUm: asked.firedHeightUm };
  return `Fired ${formatSize(fired, told.lengthUnit)}`;
}

/** Where a sheet belongs: `Sheet B of 6, row 1, place 2`. */
export function placeWords(template: Template, sheet: TemplateSheet): string {
  const at = template.sheets.indexOf(sheet);
  const row = Math.floor(at / template.sheetsAcross) + 1;
  const place = (at % template.sheetsAcross) + 1;
  const count = template.sheets.length;
  if (count === 1) return 'The only sheet';
  return `Sheet ${sheet.letter} of ${count}, row ${row}, place ${place}`;
}

/** The measures of a template, by name, for the page that shows how its sheets lie. */
export function measureLines(template: Template, told: TemplateTold): [string, string][] {
  const { asked, wetWidthUm, wetHeightUm, sheets } = template;
  const size = (widthUm: number, heightUm: number) => {
    const both = { widthUm, heightUm };
    return `${formatSize(both, told.lengthUnit)} (${formatSize(both, told.lengthUnit === 'in' ? 'mm' : 'in')})`;
  };
  const parts = asked.partsAcross * asked.partsDown;
  const lines: [string, string][] = [
    ['Wet, height × width', size(wetWidthUm, wetHeightUm)],
    ['Fired, height × width', size(asked.firedWidthUm, asked.firedHeightUm)],
    ['Shrinkage', `${asked.shrinkagePercent}% of the wet length`],
  ];
  if (parts > 1)
    lines.push(['Parts', `${parts}: ${asked.partsAcross} across, ${asked.partsDown} down`]);
  lines.push([
    'Sheets',
    sheets.length === 1 ? 'one' : `${sheets.length}, A to ${sheets.at(-1)?.letter}`,
  ]);
  return lines;
}

/** How a template is printed and put together, in the order of doing. */
export function stepsToLay(template: Template): string[] {
  const check =
    'Print at its own size, 100 percent, never fitted to the page. Then hold a real ruler against ' +
    'the two at the foot: when they differ, the printer has changed the size.';
  const shrinks =
    'Each lot of clay shrinks in its own way: measure a bar of this lot in your own kiln first.';
  if (template.sheets.length === 1) return [check, shrinks];
  const lay =
    'A letter at an edge names the sheet that lies there. Where one stands at the left or at the top, ' +
    'cut along the dashes, lay that edge over the neighbour so that the crosses meet, and tape it.';
  return [check, lay, shrinks];
}
