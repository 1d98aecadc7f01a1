import { Table } from '@/app/ui/figures/table';
import type { FiringTold, LineOfLoad } from '@/lib/studio/reads/firings/firing';
import type { Laid, LaidShelf } from '@/lib/studio/rules/firings/packing';
import { piecesWords } from '@/lib/studio/rules/words';
import { formatLength } from '@/lib/units/rules';
import css from './firings.module.css';

type LoadPictureProps = Readonly<{ firing: FiringTold; lengthUnit: 'in' | 'mm' }>;

/** A load shelf by shelf, to scale, as it is seen from above; the same is told in a table. */
export function LoadPicture({ firing, lengthUnit }: LoadPictureProps) {
  const { layout, kiln, lines } = firing;
  return (
    <>
      <div className={css['shelves']}>
        {layout.shelves.map((shelf, at) => (
          <figure key={shelf.pieces[0]?.key ?? at} className={css['shelf']}>
            <Shelf shelf={shelf} at={at} kiln={kiln} lines={lines} />
            <figcaption>
              {shelfName(at)}: {piecesWords(shelf.pieces.length)}, posts of{' '}
              {formatLength(shelf.postUm, lengthUnit)}
            </figcaption>
          </figure>
        ))}
      </div>
      <details className={css['fold']}>
        <summary>The same as a table</summary>
        <ShelvesTable firing={firing} lengthUnit={lengthUnit} />
      </details>
    </>
  );
}

function shelfName(at: number): string {
  return at === 0 ? 'Shelf 1, at the bottom' : `Shelf ${at + 1}`;
}

type ShelfProps = Readonly<{
  shelf: LaidShelf;
  at: number;
  kiln: FiringTold['kiln'];
  lines: readonly LineOfLoad[];
}>;

/** One shelf in whole millimetres. */
function Shelf({ shelf, at, kiln, lines }: ShelfProps) {
  const [width, depth] = [kiln.shelfWidthUm / 1_000, kiln.shelfDepthUm / 1_000];
  const said = countsOn(shelf, lines).map(
    ({ line, pieces }) => `${pieces} of job ${line.jobNumber}`,
  );
  return (
    <svg
      viewBox={`0 0 ${width} ${depth}`}
      role="img"
      aria-label={`${shelfName(at)}: ${said.join(', ')}`}
    >
      {shelf.pieces.map((piece) => (
        <Piece key={piece.key} piece={piece} lines={lines} />
      ))}
    </svg>
  );
}

function Piece({ piece, lines }: Readonly<{ piece: Laid; lines: readonly LineOfLoad[] }>) {
  const found = lineOf(piece, lines);
  const [x, y] = [piece.xUm / 1_000, piece.yUm / 1_000];
  const [width, depth] = [piece.widthUm / 1_000, piece.depthUm / 1_000];
  const name = found ? nameOf(piece, found.line) : '';
  const size = Math.min(depth * 0.5, (width * 1.6) / Math.max(2, name.length), 34);
  return (
    <g>
      <title>{found ? `Job ${found.line.jobNumber}, ${found.line.title}` : ''}</title>
      <rect
        className={css['piece']}
        data-hand={found ? found.at % 4 : 0}
        {...{ x, y, width, height: depth }}
      />
      <text className={css['piece-name']} x={x + width / 2} y={y + depth / 2} fontSize={size}>
        {name}
      </text>
    </g>
  );
}

/** The line of a piece, by the name that it was laid under. */
function lineOf(
  piece: Laid,
  lines: readonly LineOfLoad[],
): { line: LineOfLoad; at: number } | null {
  const [id] = piece.key.split('#');
  const at = lines.findIndex((line) => line.id === id);
  const line = lines[at];
  return line ? { line, at } : null;
}

/** The number of a job, and of a numbered drawing that of the part too: `12`, `12/7`. */
function nameOf(piece: Laid, line: LineOfLoad): string {
  const part = line.parts[Number(piece.key.split('#')[1])];
  return part ? `${line.jobNumber}/${part.number}` : String(line.jobNumber);
}

function countsOn(shelf: LaidShelf, lines: readonly LineOfLoad[]) {
  return lines.flatMap((line) => {
    const pieces = shelf.pieces.filter((piece) => lineOf(piece, lines)?.line === line).length;
    return pieces === 0 ? [] : [{ line, pieces }];
  });
}

function ShelvesTable({ firing, lengthUnit }: LoadPictureProps) {
  const rows = firing.layout.shelves.flatMap((shelf, at) =>
    countsOn(shelf, firing.lines).map(({ line, pieces }) => ({
      key: `${at} ${line.id}`,
      cells: [
        shelfName(at),
        `Job ${line.jobNumber}, ${line.title}`,
        pieces,
        `${formatLength(line.widthUm, lengthUnit)} × ${formatLength(line.depthUm, lengthUnit)}`,
        formatLength(line.heightUm, lengthUnit),
      ],
    })),
  );
  return (
    <Table
      caption="What lies on which shelf"
      columns={[
        { name: 'Shelf' },
        { name: 'What' },
        { name: 'Pieces', figure: true },
        { name: 'On the shelf', figure: true, wideOnly: true },
        { name: 'High', figure: true, wideOnly: true },
      ]}
      rows={rows}
    />
  );
}
