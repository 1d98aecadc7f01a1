import { Table } from '@/app/ui/figures/table';
import type { Day } from '@/lib/dates/rules';
import type { ConeWaiting } from '@/lib/studio/rules/firings/queue';
import { firingKindWords } from '@/lib/studio/rules/firings/schedule';
import { turnsWords } from '@/lib/studio/rules/firings/words';
import { shortDay } from '@/lib/studio/rules/words';
import { waitedWords } from './kiln-words';

type WaitingTableProps = Readonly<{ kiln: string; cones: readonly ConeWaiting[]; todayOn: Day }>;

/** What waits for a kiln, cone by cone. */
export function WaitingTable({ kiln, cones, todayOn }: WaitingTableProps) {
  return (
    <Table
      caption={`What waits for ${kiln}`}
      captionHeardOnly
      columns={[
        { name: 'Waits for' },
        { name: 'Pieces', figure: true },
        { name: 'Jobs', figure: true, wideOnly: true },
        { name: 'Waiting', wideOnly: true },
        { name: 'Needed', wideOnly: true },
        { name: 'A load of it' },
        { name: 'Turns', figure: true },
      ]}
      rows={cones.map((one) => ({
        key: `${one.kind} ${one.cone}`,
        cells: [
          `${firingKindWords[one.kind]}, cone ${one.cone}`,
          one.pieces,
          one.jobs.length,
          waitedWords(one.waitedDays),
          one.neededOn ? shortDay(one.neededOn, todayOn) : 'not set',
          loadWords(one),
          turnsWords(one.queue.turnHundredths),
        ],
      }))}
    />
  );
}

/** How full a proposed load is, and whether it is worth a turn. */
export function loadWords({ loadPieces, fill, ready }: ConeWaiting): string {
  if (loadPieces === 0) return 'sizes are missing';
  const full = `${fill.areaPercent}% full`;
  if (ready.isFull) return `${full}, ready to fire`;
  return ready.hasWaited ? `${full}, has waited long enough` : `${full}, still waits`;
}
