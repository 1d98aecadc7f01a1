import Link from 'next/link';
import { Table } from '@/app/ui/figures/table';
import type { PartMapShown } from '@/lib/studio/reads/parts/map';
import { lossCauseWords } from '@/lib/studio/rules/jobs/losing';
import type { NumberNow } from '@/lib/studio/rules/parts/fates';
import { areaWords, partSize } from '@/lib/studio/rules/parts/sizes';
import { makeWords, placeWords } from '@/lib/studio/rules/parts/words';
import { formatSize, type LengthSystem } from '@/lib/units/rules';

type PartsTableProps = Readonly<{ map: PartMapShown; lengthUnit: LengthSystem }>;

/** The same as the map, in rows: each number with where it stands, its size and its colour area. */
export function PartsTable({ map, lengthUnit }: PartsTableProps) {
  return (
    <Table
      caption="All the parts"
      captionHeardOnly
      columns={[
        { name: 'Part' },
        { name: 'Where it stands' },
        { name: 'Colour area', wideOnly: true },
        { name: 'Fired', figure: true, wideOnly: true },
        { name: 'Wet', figure: true },
        { name: 'Face', figure: true, wideOnly: true },
      ]}
      rows={map.shapes.map((shape) => {
        const now = map.numbers.find(({ number }) => number === shape.number);
        const size = partSize(shape.outline, map.size, map.shrinkagePercent);
        return {
          key: String(shape.number),
          cells: [
            <Link key="number" href={`/studio/${map.jobNumber}/parts?part=${shape.number}#part`}>
              {shape.number}
            </Link>,
            now ? whereWords(map, now) : '',
            shape.area || '–',
            formatSize(size, lengthUnit),
            size.wet ? formatSize(size.wet, lengthUnit) : '–',
            areaWords(size.areaMm2, lengthUnit),
          ],
        };
      })}
    />
  );
}

/** Where a number stands, which piece of clay that is, and what else there is of it. */
function whereWords({ steps }: PartMapShown, { best, living, lost }: NumberNow): string {
  const place = best ? placeWords(steps, best.position) : 'lost';
  const which = best && best.make > 1 ? `, ${makeWords(best)}` : '';
  const fire = best?.isInKiln ? ', in the fire' : '';
  const more = living.length > 1 ? `; ${living.length - 1} more beside it` : '';
  const gone = lost.map(({ cause }) => (cause ? lossCauseWords[cause] : ''));
  return `${place}${which}${fire}${more}${gone.length > 0 ? `; lost: ${gone.join(', ')}` : ''}`;
}
