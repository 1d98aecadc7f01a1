import { labelsTaken } from '@/lib/documents/rules/labels/taken';
import type { LabelPrint } from '@/lib/documents/rules/labels/printing';
import { labelSheet, labelsOn, labelSpot } from '@/lib/documents/rules/labels/sheets';
import { labelCode, type LabelPiece } from '@/lib/documents/rules/labels/words';
import css from './labels.module.css';

type SheetDrawnProps = Readonly<{ pieces: readonly LabelPiece[]; print: LabelPrint }>;

type Drawn = { key: string; title: string; code: string; isCaution: boolean };

/** The first sheet as it will lie: which labels are written, and with which piece. */
export function SheetDrawn({ pieces, print }: SheetDrawnProps) {
  const sheet = labelSheet(print.sheet);
  const all = labelsOn(sheet);
  const labels = labelsOf(pieces, print);
  const sheets = Math.ceil((labels.length + print.firstAt - 1) / all);
  const spots = Array.from({ length: all }, (_, at) => labelSpot(sheet, at));
  const here = labels.slice(0, all - print.firstAt + 1);
  return (
    <figure>
      <svg
        className={css['sheet']}
        viewBox={`0 0 ${sheet.pageWidth} ${sheet.pageHeight}`}
        role="img"
        aria-label={`The first of ${sheets} ${sheets === 1 ? 'sheet' : 'sheets'}: ${here.length} of ${all} labels are written.`}
      >
        {spots.map((spot, at) => {
          const label = here[at - print.firstAt + 1];
          const size = { width: sheet.width, height: sheet.height };
          return (
            <g key={at} transform={`translate(${spot.x} ${spot.y})`}>
              <rect {...size} rx={6} className={css[label ? 'written' : 'label']} />
              {label ? <LabelWords label={label} width={sheet.width} /> : null}
            </g>
          );
        })}
      </svg>
      <figcaption className={css['quiet']}>
        {sheets === 1 ? 'One sheet.' : `The first of ${sheets} sheets.`}
      </figcaption>
    </figure>
  );
}

function LabelWords({ label, width }: Readonly<{ label: Drawn; width: number }>) {
  const signs = Math.floor(width / 8);
  const title = label.isCaution ? 'Caution' : label.title;
  return (
    <g className={css['words']}>
      <text x={10} y={26} fontSize={16} className={css['title']}>
        {title.length > signs ? `${title.slice(0, signs - 1)}…` : title}
      </text>
      <text x={10} y={46} fontSize={13}>
        {label.code}
      </text>
    </g>
  );
}

function labelsOf(pieces: readonly LabelPiece[], { sheet }: LabelPrint): Drawn[] {
  return pieces.flatMap((piece, at) => {
    const words = { title: piece.title, code: labelCode(piece) };
    const label = { ...words, key: `${at}`, isCaution: false };
    if (labelsTaken(piece, sheet) === 1) return [label];
    return [label, { ...words, key: `${at} caution`, isCaution: true }];
  });
}
