import Link from 'next/link';
import { DayText } from '@/app/ui/figures/day-text';
import { isAllowed, type Role } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import type { Story, StoryTold } from '@/lib/stock/reads/moves/story';
import { storyParts, type StoryPaper, type StoryPart } from '@/lib/stock/rules/moves/story';
import css from './story.module.css';

type StoryListProps = Readonly<{
  story: Pick<Story, 'told'>;
  timeZone: string;
  /** A paper is led to only where one may open it. */
  roles: readonly Role[];
}>;

/** The story of a piece: one sentence for each thing that happened, and how many there were then. */
export function StoryList({ story, timeZone, roles }: StoryListProps) {
  return (
    <ol className={css['story']} aria-label="What happened, the newest first">
      {story.told.map((told) => (
        <li key={told.id.toString()} className={css['told']}>
          <span className={css['when']}>
            <DayText day={dayOf(told.at, timeZone)} />
          </span>
          <span className={css['words']}>
            <Sentence told={told} roles={roles} />
          </span>
          <span className={css['standing']}>
            {told.standing}
            <span className="heard-only"> in all then</span>
          </span>
        </li>
      ))}
    </ol>
  );
}

function Sentence({ told, roles }: Readonly<{ told: StoryTold; roles: readonly Role[] }>) {
  return storyParts(told).map((part, place) => (
    <Part key={`${place} ${part.words}`} part={part} roles={roles} />
  ));
}

function Part({ part, roles }: Readonly<{ part: StoryPart; roles: readonly Role[] }>) {
  const href = part.paper && hrefOf(part.paper, roles);
  return href ? <Link href={href}>{part.words}</Link> : part.words;
}

function hrefOf(paper: StoryPaper, roles: readonly Role[]): string | null {
  switch (paper.kind) {
    case 'receipt':
      return isAllowed(roles, 'receipts.see') ? `/receipts/${paper.number}` : null;
    case 'move':
      return isAllowed(roles, 'stock.move') ? `/stock/places/moves/${paper.number}` : null;
    case 'count':
      return isAllowed(roles, 'stock.move') ? `/stock/counts/${paper.number}` : null;
    case 'list':
      return isAllowed(roles, 'stock.load') ? `/stock/list/${paper.id}` : null;
  }
}
