import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import { formatInstant } from '@/lib/dates/rules';
import { formatCents } from '@/lib/money/rules';
import type { FiringTold } from '@/lib/studio/reads/firings/firing';
import { degreesWords, type Scale } from '@/lib/studio/rules/kilns/degrees';
import { shareFiring } from '@/lib/studio/rules/kilns/energy';
import { resultsWords } from '../firing-words';
import { kwhWords } from './forecast-working';

type HowItCameProps = Readonly<{
  firing: FiringTold;
  scale: Scale;
  zone: string;
  maySeeCost: boolean;
}>;

/** How each line came out, what the firing took, and what of its cost falls to each piece. */
export function HowItCame({ firing, scale, zone, maySeeCost }: HowItCameProps) {
  const { opened, lines, lit } = firing;
  if (!opened) return null;
  const shares = shareFiring(opened.costCents, lines);
  const eachOf = (lineId: string): bigint | null => {
    const share = shares.ok ? shares.value.find(({ id }) => id === lineId) : undefined;
    return share?.eachCents[0] ?? null;
  };
  return (
    <Section title="How it came out" id="came">
      <Table
        caption="How it came out"
        captionHeardOnly
        columns={[
          { name: 'Job' },
          { name: 'Pieces', figure: true },
          { name: 'How' },
          ...(maySeeCost ? [{ name: 'Firing of one', figure: true }] : []),
        ]}
        rows={lines.map((line) => {
          const each = eachOf(line.id);
          return {
            key: line.id,
            cells: [
              `${line.jobNumber}, ${line.title}`,
              line.pieces,
              resultsWords(line.results),
              ...(maySeeCost ? [each === null ? '' : <Money key="each" cents={each} />] : []),
            ],
          };
        })}
      />
      <Facts
        facts={[
          { name: 'Opened', value: `${formatInstant(opened.at, zone)}, by ${opened.by}` },
          { name: 'It read', value: degreesWords(opened.celsius, scale) },
          {
            name: 'It took',
            value: `${kwhWords(opened.wattHours)}, ${opened.isMetered ? 'by the meter' : 'as reckoned'}`,
          },
          ...(maySeeCost ? [{ name: 'It cost', value: formatCents(opened.costCents) }] : []),
          ...(opened.coneFell ? [{ name: 'The cone', value: opened.coneFell }] : []),
          ...(lit?.saidOfDry ? [{ name: 'Said of the drying', value: lit.saidOfDry }] : []),
        ]}
      />
    </Section>
  );
}
