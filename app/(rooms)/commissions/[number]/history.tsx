import { InstantText } from '@/app/ui/figures/day-text';
import { Section } from '@/app/ui/page/section';
import type { HistoryLine } from '@/lib/commissions/reads/papers';
import css from '../commissions.module.css';

type HistoryProps = Readonly<{ lines: readonly HistoryLine[]; zone: string }>;

/** What happened to a commission, the newest first. */
export function History({ lines, zone }: HistoryProps) {
  return (
    <Section title="What happened" id="history">
      <ol className={css['history']}>
        {lines.map((line) => (
          <li key={line.id}>
            <span className={css['quiet']}>
              <InstantText at={line.at} zone={zone} />
            </span>
            <span>{line.sentence}</span>
          </li>
        ))}
      </ol>
    </Section>
  );
}
