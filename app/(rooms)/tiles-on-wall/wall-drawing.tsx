import { formatLength, type LengthSystem } from '@/lib/units/rules';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import type { TileAxis } from '@/lib/walls/rules/tiles/axis';
import { placeOfSet, type OnWall, type TileLayout } from '@/lib/walls/rules/tiles/layout';
import { openingWords } from '@/lib/walls/rules/tiles/words';
import css from './tiles.module.css';

type WallDrawingProps = Readonly<{
  asked: TileWallAsked;
  layout: TileLayout;
  system: LengthSystem;
  /** The set tile that is being moved, counted from 0. */
  chosen?: number | null | undefined;
  /** Called with a place on the wall, in micrometres from its lower left corner. */
  onTouch?: ((leftUm: number, bottomUm: number) => void) | undefined;
}>;

/** The longer side of a wall on the drawing, and the room around it for measurements. */
const longest = 1_000;
const around = 96;

/** A wall with its tiles, to scale, with its measurements. */
export function WallDrawing({ asked, layout, system, chosen, onTouch }: WallDrawingProps) {
  const scale = longest / Math.max(asked.widthUm, asked.heightUm);
  const [width, height] = [asked.widthUm * scale, asked.heightUm * scale];
  const boxOf = (on: OnWall) => ({
    x: tenths(on.leftUm * scale),
    y: tenths(height - (on.bottomUm + on.heightUm) * scale),
    width: tenths(on.widthUm * scale),
    height: tenths(on.heightUm * scale),
  });
  const touch = (event: React.MouseEvent<SVGSVGElement>) => {
    const there = event.currentTarget.getScreenCTM();
    if (!onTouch || !there) return;
    const spot = new DOMPoint(event.clientX, event.clientY).matrixTransform(there.inverse());
    onTouch(spot.x / scale, (height - spot.y) / scale);
  };
  const pathOf = (kind: 'whole' | 'cut') =>
    layout.cells
      .filter((cell) => cell.kind === kind)
      .map((cell) => rectPath(boxOf(cell)))
      .join('');
  return (
    <div className={css['scroll']} tabIndex={0} role="region" aria-label="The wall, drawn to scale">
      <svg
        className={css['wall']}
        data-touched={onTouch ? true : undefined}
        viewBox={[-around, -around, tenths(width + 2 * around), tenths(height + 2 * around)].join(
          ' ',
        )}
        role="img"
        aria-label={`A wall of ${layout.columns.strips.length} columns and ${layout.rows.strips.length} rows of tile with ${asked.sets.length} set tiles`}
        onClick={onTouch ? touch : undefined}
      >
        <defs>
          <pattern id="cut-tile" width="8" height="8" patternUnits="userSpaceOnUse">
            <path d="M0 8L8 0" className={css['hatch']} />
          </pattern>
        </defs>
        <rect width={tenths(width)} height={tenths(height)} className={css['ground']} />
        <path d={pathOf('whole')} className={css['whole']} />
        <path d={pathOf('cut')} className={css['whole']} />
        <path d={pathOf('cut')} fill="url(#cut-tile)" />
        {asked.openings.map((opening, at) => (
          <Named key={at} box={boxOf(opening)} words={openingWords[opening.kind]} part="opening" />
        ))}
        {asked.sets.map((set, at) => {
          const place = placeOfSet(set, layout.columns, layout.rows);
          if (!place) return null;
          const part = at === chosen ? 'chosen' : 'set';
          return <Named key={at} box={boxOf(place)} words={String(at + 1)} part={part} />;
        })}
        <Measures {...{ asked, layout, system, width, height }} />
      </svg>
    </div>
  );
}

type Box = Readonly<{ x: number; y: number; width: number; height: number }>;
type NamedProps = Readonly<{ box: Box; words: string; part: 'opening' | 'set' | 'chosen' }>;

function Named({ box, words, part }: NamedProps) {
  const size = Math.min(26, (box.width * 1.7) / words.length, box.height * 0.6);
  return (
    <g className={css[part]}>
      <rect {...box} />
      {size < 10 ? null : (
        <text x={box.x + box.width / 2} y={box.y + box.height / 2} fontSize={tenths(size)}>
          {words}
        </text>
      )}
    </g>
  );
}

type MeasuresProps = Pick<WallDrawingProps, 'asked' | 'layout' | 'system'> &
  Readonly<{ width: number; height: number }>;

/** How wide and high it is, and what is cut at its ends. */
function Measures({ asked, layout, system, width, height }: MeasuresProps) {
  const { columns, rows } = layout;
  const across = partsOf(columns, { tileUm: asked.tileWidthUm, longUm: asked.widthUm, system });
  const up = partsOf(rows, { tileUm: asked.tileHeightUm, longUm: asked.heightUm, system });
  return (
    <g className={css['measures']}>
      <path
        d={`M0 ${tenths(height + 40)}H${tenths(width)}M0 ${tenths(height + 28)}v24M${tenths(width)} ${tenths(height + 28)}v24`}
      />
      <text x={tenths(width / 2)} y={tenths(height + 72)}>
        {formatLength(asked.widthUm, system)}
      </text>
      {across.map(({ share, words }) => (
        <text key={words + String(share)} x={tenths(share * width)} y={-26}>
          {words}
        </text>
      ))}
      <path
        d={`M${tenths(width + 40)} 0V${tenths(height)}M${tenths(width + 28)} 0h24M${tenths(width + 28)} ${tenths(height)}h24`}
      />
      <UpText
        x={tenths(width + 76)}
        y={tenths(height / 2)}
        words={formatLength(asked.heightUm, system)}
      />
      {up.map(({ share, words }) => (
        <UpText
          key={words + String(share)}
          x={-26}
          y={tenths(height - share * height)}
          words={words}
        />
      ))}
    </g>
  );
}

function UpText({ x, y, words }: Readonly<{ x: number; y: number; words: string }>) {
  return (
    <text x={x} y={y} transform={`rotate(-90 ${x} ${y})`}>
      {words}
    </text>
  );
}

/** The measurements along one side: what is cut at its ends, and how many are whole. */
function partsOf(
  axis: TileAxis,
  { tileUm, longUm, system }: { tileUm: number; longUm: number; system: LengthSystem },
): { share: number; words: string }[] {
  const { strips, fullCount } = axis;
  const middleOf = (fromUm: number, sizeUm: number) => (fromUm + sizeUm / 2) / longUm;
  const full = strips.filter(({ isCut }) => !isCut);
  const [first, last] = [full.at(0), full.at(-1)];
  const cuts = strips
    .filter(({ isCut }) => isCut)
    .map(({ fromUm, sizeUm }) => ({
      share: middleOf(fromUm, sizeUm),
      words: formatLength(sizeUm, system),
    }));
  if (!first || !last) return cuts;
  const share = middleOf(first.fromUm, last.fromUm + last.sizeUm - first.fromUm);
  return [...cuts, { share, words: `${fullCount} × ${formatLength(tileUm, system)}` }];
}

function rectPath({ x, y, width, height }: Box): string {
  return `M${x} ${y}h${width}v${height}h${-width}z`;
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
