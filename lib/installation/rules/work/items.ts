import type { WorkFacts, WorkStage } from './stages';
import { writtenItems, type WrittenItem } from './written-items';

/** Something to be ticked, and what to mind while doing it. */
export type WorkItem = {
  readonly key: WorkItemKey;
  readonly stage: WorkStage;
  readonly words: string;
  readonly caution: string | null;
};

/** What one of the ticks is kept under. */
export type WorkItemKey = keyof typeof writtenItems;

/** Every tick that any day can have. */
export const workItemKeys = Object.keys(writtenItems).filter(isItemKey);

/** Whether something is the key of a tick. */
export function isItemKey(key: string): key is WorkItemKey {
  return Object.hasOwn(writtenItems, key);
}

/**
 * The ticks of a day, in the order in which they are done.
 *
 * @source common practice among those who hang ceramic
 * @example a fetching has no fixings, and an indoor wall of wood studs no dust of brick
 */
export function itemsOf(facts: WorkFacts): readonly WorkItem[] {
  return workItemKeys.flatMap((key) => {
    const item: WrittenItem = writtenItems[key];
    const isDone = item.kinds.includes(facts.kind) && (item.when?.(facts) ?? true);
    if (!isDone) return [];
    const { stage, words, caution = null } = item;
    return [
      {
        ...{ key, stage },
        words: typeof words === 'string' ? words : words(facts),
        caution: typeof caution === 'function' ? caution(facts) : caution,
      },
    ];
  });
}
