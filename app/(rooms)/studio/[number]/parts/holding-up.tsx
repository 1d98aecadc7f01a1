import Link from 'next/link';
import { Section } from '@/app/ui/page/section';
import type { PartMapShown } from '@/lib/studio/reads/parts/map';
import { holdingUp, holdsUp } from '@/lib/studio/rules/parts/holding';
import { holdsUpWords } from '@/lib/studio/rules/parts/words';
import css from './parts.module.css';

/** The most that are told; when more are behind, nothing is being held up yet. */
const toldMost = 8;

/** The parts that others wait for, the farthest behind first, each with its way from here. */
export function HoldingUp({ map }: Readonly<{ map: PartMapShown }>) {
  const behind = holdingUp(map.steps, map.numbers);
  if (behind.length === 0 || behind.length > toldMost) return null;
  return (
    <Section title="What holds it up">
      <ul className={css['history']}>
        {behind.map((now) => {
          const held = holdsUp(map.steps, now, map.numbers);
          return (
            <li key={now.number}>
              <Link href={`/studio/${map.jobNumber}/parts?part=${now.number}#part`}>
                Part {now.number}
              </Link>
              : {held ? holdsUpWords(now.number, held) : ''}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
