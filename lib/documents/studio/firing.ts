import 'server-only';
import { formatDay, formatInstant } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';
import type { FiringTold } from '@/lib/studio/reads/firings/firing';
import { outcomeCount } from '@/lib/studio/rules/firings/opening';
import { firingKindWords } from '@/lib/studio/rules/firings/schedule';
import { cautionsFor } from '@/lib/studio/rules/kilns/cautions';
import { climbInFahrenheit, degreesWords, type Scale } from '@/lib/studio/rules/kilns/degrees';
import { firingTime, minutesWords } from '@/lib/studio/rules/kilns/firing';
import { piecesWords } from '@/lib/studio/rules/words';
import { formatSize } from '@/lib/units/rules';
import {
  ash,
  fullPageOf,
  iron,
  keepTogether,
  makePaper,
  ruleLine,
  sizeOf,
  wordsAndFigure,
  type Paper,
} from '../paper';

type Telling = { gallery: Gallery; scale: Scale };

/**
 * The log sheet of one firing, to hang beside the kiln: the load shelf by shelf, the schedule, and
 * what it read, with lines to write by hand as long as it is not opened.
 */
export async function firingSheetPdf(
  firing: FiringTold,
  telling: Telling,
): Promise<Uint8Array<ArrayBuffer>> {
  const { gallery } = telling;
  const title = `Firing ${firing.number}`;
  return makePaper(
    title,
    gallery,
    (paper) => {
      paper.font('serif').fontSize(16).text(title);
      paper.font('sans').fontSize(10).fillColor(ash);
      const what = `${firingKindWords[firing.kind]} to cone ${firing.cone} in ${firing.kiln.name}`;
      paper.text(what.charAt(0).toUpperCase() + what.slice(1));
      paper.text(whenWords(firing, gallery.timeZone));
      paper.fillColor(iron).moveDown(0.4);
      ruleLine(paper);
      writeLoad(paper, firing, gallery.lengthUnit);
      writeShelves(paper, firing);
      writeSchedule(paper, firing, telling.scale);
      writeReadings(paper, firing, telling);
      writeMind(paper);
    },
    fullPageOf(gallery),
  );
}

function whenWords({ lit, plannedOn }: FiringTold, zone: string): string {
  if (!lit) return `Planned for ${formatDay(plannedOn, 'long')}`;
  return `Lit ${formatInstant(lit.at, zone)} by ${lit.by}`;
}

function heading(paper: Paper, words: string, points = 60): void {
  keepTogether(paper, points);
  paper.moveDown(0.8).font('bold').fontSize(11).text(words);
  paper.font('sans').fontSize(9.5);
}

function writeLoad(paper: Paper, firing: FiringTold, unit: 'in' | 'mm'): void {
  const { lines, fill } = firing;
  heading(paper, `The load, ${fill.areaPercent}% full by shelf`);
  for (const line of lines) {
    const lying = { widthUm: line.widthUm, heightUm: line.depthUm, depthUm: line.heightUm };
    const size = formatSize(lying, unit);
    const parts = line.parts.map(({ number }) => number).join(', ');
    const which = parts === '' ? '' : `, parts ${parts}`;
    const words = `Job ${line.jobNumber}, ${line.title}${which}: ${size}`;
    wordsAndFigure(paper, words, cameOrPieces(line));
  }
}

function cameOrPieces({ results, pieces }: FiringTold['lines'][number]): string {
  if (results.length === 0) return piecesWords(pieces);
  return results.map((each) => outcomeCount(each.pieces, each.outcome)).join(', ');
}

/** How wide one shelf is drawn, and the room between two, in points. */
const [drawnWide, between] = [112, 14];

/** The shelves to scale, as they are seen from above, four in a row. */
function writeShelves(paper: Paper, firing: FiringTold): void {
  const { kiln, layout, lines } = firing;
  const points = drawnWide / kiln.shelfWidthUm;
  const tall = kiln.shelfDepthUm * points;
  const { margin } = sizeOf(paper);
  for (const [at, shelf] of layout.shelves.entries()) {
    const column = at % 4;
    if (column === 0) {
      keepTogether(paper, tall + 30);
      paper.y += 6;
    }
    const [left, top] = [margin + column * (drawnWide + between), paper.y];
    paper.lineWidth(0.8).strokeColor(iron).rect(left, top, drawnWide, tall).stroke();
    for (const piece of shelf.pieces) {
      const [x, y] = [left + piece.xUm * points, top + piece.yUm * points];
      const [width, depth] = [piece.widthUm * points, piece.depthUm * points];
      paper.lineWidth(0.4).rect(x, y, width, depth).stroke();
      const name = pieceName(piece.key, lines);
      paper.fontSize(Math.max(3, Math.min(8, depth * 0.6, (width * 1.6) / name.length)));
      const down = y + depth / 2 - paper.currentLineHeight() / 2;
      paper.text(name, x, down, { width, align: 'center', lineBreak: false });
    }
    paper.fontSize(7.5).fillColor(ash);
    paper.text(`Shelf ${at + 1}${at === 0 ? ', at the bottom' : ''}`, left, top + tall + 2, {
      width: drawnWide,
      lineBreak: false,
    });
    paper.fillColor(iron);
    const isRowOver = column === 3 || at === layout.shelves.length - 1;
    paper.x = margin;
    paper.y = isRowOver ? top + tall + 14 : top;
  }
}

/** The number of a job, and of a numbered drawing that of the part too. */
function pieceName(key: string, lines: FiringTold['lines']): string {
  const [lineId, place] = key.split('#');
  const line = lines.find(({ id }) => id === lineId);
  if (!line) return '';
  const part = line.parts[Number(place)];
  return part ? `${line.jobNumber}/${part.number}` : String(line.jobNumber);
}

function writeSchedule(paper: Paper, { schedule }: FiringTold, scale: Scale): void {
  const time = firingTime(schedule);
  heading(paper, 'How it goes');
  if (!time.ok) return;
  for (const [at, { toC, rateCPerHour, soakMinutes }] of schedule.segments.entries()) {
    const rate = scale === 'F' ? climbInFahrenheit(rateCPerHour) : rateCPerHour;
    const soak = soakMinutes === 0 ? '' : `, soak ${minutesWords(soakMinutes)}`;
    const words = `To ${degreesWords(toC, scale)} at ${rate} °${scale} an hour${soak}`;
    wordsAndFigure(paper, words, minutesWords(time.value.segments[at]?.endsAfterMinutes ?? 0));
  }
}

/** How many lines are left for readings by hand. */
const emptyLines = 10;

function writeReadings(paper: Paper, firing: FiringTold, { gallery, scale }: Telling): void {
  heading(paper, 'What it read');
  for (const { at, celsius, note } of firing.readings) {
    const when = formatInstant(at, gallery.timeZone);
    wordsAndFigure(paper, note ? `${when}: ${note}` : when, degreesWords(celsius, scale));
  }
  if (firing.opened) {
    const { at, celsius, by, coneFell } = firing.opened;
    const cone = coneFell ? `; the cone: ${coneFell}` : '';
    const words = `Opened ${formatInstant(at, gallery.timeZone)} by ${by}${cone}`;
    wordsAndFigure(paper, words, degreesWords(celsius, scale));
    return;
  }
  const { margin, width } = sizeOf(paper);
  for (let line = 0; line < emptyLines; line += 1) {
    keepTogether(paper, 24);
    paper.y += 20;
    paper.lineWidth(0.4).strokeColor(ash);
    paper
      .moveTo(margin, paper.y)
      .lineTo(width - margin, paper.y)
      .stroke();
  }
}

function writeMind(paper: Paper): void {
  const cautions = [...cautionsFor('firing'), ...cautionsFor('opening')].map(({ words }) => words);
  heading(paper, 'What to mind', 90);
  for (const words of new Set(cautions)) paper.text(words);
}
