import { Table } from '@/app/ui/figures/table';
import { Caution } from '@/app/ui/page/caution';
import { Section } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { formatLength, formatSize, type LengthSystem } from '@/lib/units/rules';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import { settingIsTheirs, tileCautions } from '@/lib/walls/rules/tiles/cautions';
import type { TileLayout } from '@/lib/walls/rules/tiles/layout';
import { layoutSteps, openingWords, setsTold, sliverWords } from '@/lib/walls/rules/tiles/words';

type WallToldProps = Readonly<{ asked: TileWallAsked; layout: TileLayout; system: LengthSystem }>;

/** What the drawing shows, in words and figures: what is ordered, where set tiles and openings are. */
export function WallTold({ asked, layout, system }: WallToldProps) {
  return (
    <>
      {sliverWords(layout, system).map((words) => (
        <Caution key={words}>{words}</Caution>
      ))}
      {tileCautions(asked).map((caution) => (
        <Caution key={caution}>{caution}</Caution>
      ))}
      <Caution>{settingIsTheirs}</Caution>
      <Section title="To order" id="order">
        <Orders {...{ asked, layout, system }} />
      </Section>
      <Places {...{ asked, layout, system }} />
      <Working
        steps={layoutSteps(asked, layout, system)}
        formula="From a joint in the middle and from a tile in the middle; the one with end cuts of half a tile or more is taken."
        source="ANSI A108.02-2017, sections 4.3.2 (cuts) and 4.3.8 (joints); spare on top is common practice"
      />
    </>
  );
}

/** The field tile and each set tile: how many are laid, how many are ordered. */
function Orders({ asked, layout, system }: WallToldProps) {
  const field = { widthUm: asked.tileWidthUm, heightUm: asked.tileHeightUm };
  const laid = layout.wholeCount + layout.cutCount;
  return (
    <Table
      caption="Tiles to order, spare ones of the same firing among them"
      captionHeardOnly
      columns={[
        { name: 'Tile' },
        { name: 'Fired size' },
        { name: 'On the wall', figure: true },
        { name: 'Order', figure: true },
      ]}
      rows={[
        {
          key: 'field',
          cells: ['Field tile', formatSize(field, system), String(laid), String(layout.order)],
        },
        ...layout.setOrders.map(({ name, count, order, ...size }) => ({
          key: `${name} ${size.widthUm} ${size.heightUm}`,
          cells: [name, formatSize(size, system), String(count), String(order)],
        })),
      ]}
    />
  );
}

function Places({ asked, layout, system }: WallToldProps) {
  if (asked.sets.length === 0 && asked.openings.length === 0) return null;
  return (
    <Section
      title="Where they are"
      id="places"
      lead="From the lower left corner of the tiles; columns from the left, rows from below."
    >
      <Table
        caption="Set tiles and openings"
        captionHeardOnly
        columns={[{ name: 'On the drawing' }, { name: 'Its lower left corner' }, { name: 'Size' }]}
        rows={[
          ...setsTold(asked, layout, system).map((set) => ({
            key: `set ${set.number}`,
            cells: [`${set.number}: ${set.name}, ${set.where}`, set.edges, set.size],
          })),
          ...asked.openings.map((opening, at) => ({
            key: `opening ${at}`,
            cells: [
              openingWords[opening.kind],
              `${formatLength(opening.leftUm, system)} from the left, ${formatLength(opening.bottomUm, system)} up`,
              formatSize(opening, system),
            ],
          })),
        ]}
      />
    </Section>
  );
}
