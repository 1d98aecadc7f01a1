import 'server-only';
import { formatDay } from '@/lib/dates/rules';
import { hoursWords, titleWords } from '@/lib/installation/rules/diary/words';
import type { WorkOrder } from '@/lib/installation/reads/work/order';
import { handsWords } from '@/lib/installation/rules/work/hands';
import { loadFor, toolsFor } from '@/lib/installation/rules/work/load';
import { theWall, wayIn, weightSaid, whoGoes } from '@/lib/installation/rules/work/order-words';
import type { WorkItem } from '@/lib/installation/rules/work/items';
import { stageTitles, workStages, type WorkStage } from '@/lib/installation/rules/work/stages';
import { heldTicks, isTicked } from '@/lib/installation/rules/work/ticks';
import type { Gallery } from '@/lib/platform/settings';
import { ash, fullPageOf, iron, makePaper, ruleLine, sizeOf, type Paper } from '../paper';

const gap = 18;
const small = 8.4;

/**
 * The work order on paper, on one page where it can be: what to know, what rides along, and the
 * ticks with what to mind. Codes of doors are not on it: a paper is left behind.
 */
export async function workOrderPdf(
  order: WorkOrder,
  gallery: Gallery,
): Promise<Uint8Array<ArrayBuffer>> {
  const { kind, commission, address } = order;
  const title = titleWords(kind, commission?.title ?? null, address);
  const write = (paper: Paper) => {
    writeHead(paper, title, order, gallery);
    writeFacts(paper, order, gallery);
    writeTicks(paper, order);
    writeFoot(paper, order);
  };
  const size = { ...fullPageOf(gallery), margin: 36 };
  return makePaper(`Work order: ${title}`, gallery, write, size);
}

function writeHead(paper: Paper, title: string, order: WorkOrder, gallery: Gallery): void {
  paper.font('serif').fontSize(16).fillColor(iron).text(title);
  paper.font('sans').fontSize(9.5).fillColor(ash);
  const when = `${formatDay(order.startsOn, 'long')}, ${hoursWords(order, gallery.timeZone)}`;
  const { commission } = order;
  const whose = commission
    ? ` · commission ${commission.number}, for ${commission.collector}${order.phone ? `, ${order.phone}` : ''}`
    : '';
  paper.text(`Work order · ${when}${whose}`).fillColor(iron).moveDown(0.3);
  ruleLine(paper);
}

function writeFacts(paper: Paper, order: WorkOrder, gallery: Gallery): void {
  const { survey, facts } = order;
  const unit = gallery.lengthUnit;
  const lines: readonly (readonly [string, string | null | undefined])[] = [
    ['Where', order.address],
    ['Who goes', whoGoes(order)],
    ['Lets us in', order.meets],
    ['The way in', wayIn(survey, unit)],
    ['People', survey?.people],
    ['Building', survey?.building],
    ['They have ready', order.prepares],
    ['What to know', order.note],
    ['Weight', [weightSaid(order.weight, unit), handsWords(facts.weightG)].join('. ')],
    ['The wall', theWall(order)],
    ['In the wall', survey?.services],
    ['How it hangs', planWords(order)],
    ['If weather forbids', order.fallBack],
    ['In the van', loadFor(facts).join(', ')],
    ['Tools', toolsFor(facts).join(', ')],
  ];
  const { width, margin } = sizeOf(paper);
  for (const [name, words] of lines) {
    if (!words?.trim()) continue;
    const top = paper.y;
    paper.font('bold').fontSize(small).text(name, margin, top, { width: 86 });
    paper
      .font('sans')
      .fontSize(small)
      .text(words, margin + 90, top, {
        width: width - 2 * margin - 90,
        lineGap: 0.5,
      });
    paper.moveDown(0.15);
  }
  paper.x = margin;
  paper.moveDown(0.3);
}

function planWords({ kind, plan, planVersion }: WorkOrder): string {
  if (kind !== 'hanging') return '';
  if (!plan || planVersion === null)
    return 'There is no plan of the fixings: do not hang it on a guess.';
  if (!plan.isAllowed)
    return `Plan ${planVersion} does not hold by its own figures: do not hang it so.`;
  const old = plan.isOld ? ' The wall was looked at again since: check it first.' : '';
  return `By plan ${planVersion}, the installer’s sheet.${old}`;
}

/** The ticks in two columns, each with what to mind under it. */
function writeTicks(paper: Paper, order: WorkOrder): void {
  const { width, margin, height } = sizeOf(paper);
  const wide = (width - 2 * margin - gap) / 2;
  const lines = linesOf(order.items);
  const held = heldTicks(order.ticks);
  const total = lines.reduce((sum, line) => sum + heightOf(paper, line, wide), 0);
  let [column, y, top] = [0, paper.y, paper.y];
  let lowest = y;
  for (const [at, line] of lines.entries()) {
    const tall = heightOf(paper, line, wide);
    // The head of a stage stands with the first thing under it.
    const next = line.item === null ? lines[at + 1] : undefined;
    const reach = tall + (next ? heightOf(paper, next, wide) : 0);
    const isFull = y + reach > height - margin - 12;
    const isHalf = column === 0 && y - top + (next ? reach : 0) > total / 2;
    if (isHalf || (isFull && column === 0)) {
      [column, y] = [1, top];
    } else if (isFull) {
      paper.addPage();
      [column, y, top] = [0, margin, margin];
      lowest = margin;
    }
    drawLine(paper, line, {
      ...{ x: margin + column * (wide + gap), y, wide },
      isDone: line.item !== null && isTicked(held, line.item.key),
    });
    y += tall;
    lowest = Math.max(lowest, y);
  }
  paper.x = margin;
  paper.y = lowest + 6;
}

type Line = { stage: WorkStage; item: null } | { stage: WorkStage; item: WorkItem };

function linesOf(items: readonly WorkItem[]): Line[] {
  return workStages.flatMap((stage) => {
    const own = items.filter((item) => item.stage === stage);
    return own.length === 0 ? [] : [{ stage, item: null }, ...own.map((item) => ({ stage, item }))];
  });
}

function heightOf(paper: Paper, { item }: Line, wide: number): number {
  if (!item) return 16.5;
  const words = paper
    .font('sans')
    .fontSize(small)
    .heightOfString(item.words, { width: wide - 16 });
  if (item.caution === null) return words + 2.6;
  return words + 2.6 + paper.fontSize(7.2).heightOfString(item.caution, { width: wide - 16 });
}

type Where = { x: number; y: number; wide: number; isDone: boolean };

function drawLine(paper: Paper, { stage, item }: Line, { x, y, wide, isDone }: Where): void {
  if (!item) {
    paper
      .font('serif')
      .fontSize(11)
      .fillColor(iron)
      .text(stageTitles[stage], x, y + 2);
    return;
  }
  paper
    .rect(x, y + 1.5, 8, 8)
    .lineWidth(0.7)
    .strokeColor(iron)
    .stroke();
  if (isDone) {
    paper
      .moveTo(x + 1.5, y + 5.5)
      .lineTo(x + 3.5, y + 8)
      .lineTo(x + 7, y + 2.5)
      .stroke();
  }
  paper
    .font('sans')
    .fontSize(small)
    .fillColor(iron)
    .text(item.words, x + 14, y, { width: wide - 16 });
  if (item.caution !== null) {
    paper
      .fontSize(7.2)
      .fillColor(ash)
      .text(item.caution, x + 14, paper.y, { width: wide - 16 });
    paper.fillColor(iron);
  }
}

function writeFoot(paper: Paper, { signed }: WorkOrder): void {
  paper.font('sans').fontSize(7.6).fillColor(ash);
  paper.text(
    signed
      ? `${signed.signedBy} signed, with ${signed.by}.`
      : 'Check on site; local codes and a licensed contractor decide. Codes of doors are on the page of the work order alone.',
  );
  paper.fillColor(iron);
}
