import 'server-only';
import type { PriceTold } from '@/lib/commissions/reads/money/paper';
import type { PlanStepDue } from '@/lib/commissions/rules/money/plan';
import { eventWords } from '@/lib/commissions/rules/proposal/plan';
import { formatDay } from '@/lib/dates/rules';
import { currencyNamed, formatCents, type Cents } from '@/lib/money/rules';
import { ash, iron, keepTogether, ruleLine, sizeOf, wordsAndFigure, type Paper } from '../paper';
import { writeHeading } from './page';

/** How this paper writes money. */
export type MoneyWords = (cents: Cents) => string;

/** Money in the gallery's own currency. */
export function moneyIn(gallery: { currency: string }): MoneyWords {
  const currency = currencyNamed(gallery.currency);
  return (cents) => formatCents(cents, { currency });
}

/** Words and a figure on one line of the working hand, kept from breaking over a page. */
export function writeLine(paper: Paper, words: string, figure: string): void {
  const { width, margin } = sizeOf(paper);
  paper.font('sans').fontSize(10).fillColor(iron);
  const room = width - 2 * margin - paper.widthOfString(figure) - 14;
  keepTogether(paper, paper.heightOfString(words, { width: room }) + 6);
  wordsAndFigure(paper, words, figure);
  paper.moveDown(0.15);
}

/** The one sum of a paper that everybody looks for. */
export function writeSum(paper: Paper, words: string, figure: string): void {
  keepTogether(paper, 24);
  paper.moveDown(0.1).font('bold').fontSize(12.5).fillColor(iron);
  wordsAndFigure(paper, words, figure);
  paper.font('sans').fontSize(10).moveDown(0.15);
}

/** A quiet line for what stands beside. */
export function writeQuiet(paper: Paper, words: string): void {
  if (words === '') return;
  keepTogether(paper, 16);
  paper.font('sans').fontSize(8.5).fillColor(ash).text(words, { lineGap: 1 });
  paper.fillColor(iron).fontSize(10).moveDown(0.2);
}

/** What is agreed: the lines of the original, each signed change, the tax by authority, the whole. */
export function writePrice(paper: Paper, price: PriceTold, money: MoneyWords): void {
  const { agreedOn, lines, changes, tax } = price;
  writeHeading(paper, `What is agreed, since ${formatDay(agreedOn, 'long')}`);
  for (const { words, amountCents } of lines) writeLine(paper, words, money(amountCents));
  for (const { number, words, priceCents, signedOn } of changes) {
    const name = `Change order ${number}, signed ${formatDay(signedOn, 'long')}: ${words}`;
    writeLine(paper, name, signed(priceCents, money));
  }
  if (price.letOffCents !== 0n) {
    writeLine(paper, 'Let off after the hand-over', money(-price.letOffCents));
  }
  ruleLine(paper);
  writeLine(paper, 'Before tax', money(price.priceCents));
  for (const { authority, ratePercent, taxCents } of tax.parts) {
    const name = `Sales tax of ${tax.place}, ${authority} ${trimmed(ratePercent)} %`;
    writeLine(paper, name, money(taxCents));
  }
  writeSum(paper, 'Together', money(price.totalCents));
  writeQuiet(paper, taxSentence(price));
}

function taxSentence({ tax: { exemptWhy, isFixed, parts } }: PriceTold): string {
  const less = exemptWhy === '' ? '' : `No tax, or less of it: ${exemptWhy}`;
  if (isFixed) return less;
  const later =
    parts.length === 0
      ? 'Sales tax is worked out on the day of the hand-over.'
      : 'Sales tax is reckoned at today’s rates. It is charged with the hand-over, at the rates of that day.';
  return [later, less].filter(Boolean).join(' ');
}

function signed(cents: Cents, money: MoneyWords): string {
  return cents > 0n ? `+${money(cents)}` : money(cents);
}

/** A percentage without the noughts behind it. */
function trimmed(percent: string): string {
  return percent.includes('.') ? percent.replace(/\.?0+$/, '') : percent;
}

/** The steps that are not paid whole, and what makes each due. */
export function writePlan(paper: Paper, plan: readonly PlanStepDue[], money: MoneyWords): void {
  const open = plan.filter(({ leftCents }) => leftCents > 0n);
  if (open.length === 0) return;
  writeHeading(paper, 'Still to come by the plan');
  for (const { name, event, dueSince, leftCents, amountCents } of open) {
    const due = dueSince ? `due since ${formatDay(dueSince, 'long')}` : `due ${eventWords[event]}`;
    const of = leftCents < amountCents ? `, of ${money(amountCents)}` : '';
    writeLine(paper, `${name}, ${due}${of}`, money(leftCents));
  }
}
