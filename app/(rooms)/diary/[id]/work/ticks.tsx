'use client';

import { useId } from 'react';
import { Caution } from '@/app/ui/page/caution';
import type { WorkItem } from '@/lib/installation/rules/work/items';
import type { WorkStage } from '@/lib/installation/rules/work/stages';
import { isTicked } from '@/lib/installation/rules/work/ticks';
import { entryOf, useWorkDay } from './day-shown';
import css from './work.module.css';

/** The ticks of one part of the day, in the order in which they are done. */
export function Ticks({ stage }: Readonly<{ stage: WorkStage }>) {
  const { day } = useWorkDay();
  return (
    <ul className={css['ticks']}>
      {day.items
        .filter((item) => item.stage === stage)
        .map((item) => (
          <TickLine key={item.key} item={item} />
        ))}
    </ul>
  );
}

function TickLine({ item: { key, words, caution } }: Readonly<{ item: WorkItem }>) {
  const { day, here, outbox } = useWorkDay();
  const id = useId();
  const isDone = isTicked(here.held, key);
  const by = day.ticks.find((tick) => tick.id === here.held.get(key)?.id)?.by;
  const tick = () => {
    const entry = entryOf(day, { did: 'tick', item: key, isDone: !isDone });
    if (!('faults' in entry)) void outbox.keep(entry);
  };
  return (
    <li>
      <label className={css['tick']}>
        <input type="checkbox" checked={isDone} onChange={tick} aria-describedby={`${id}-mark`} />
        <span>{words}</span>
      </label>
      <span id={`${id}-mark`} className={css['mark']}>
        {here.waiting.has(key) ? 'not sent yet' : isDone && by ? by : ''}
      </span>
      {caution ? <Caution>{caution}</Caution> : null}
    </li>
  );
}
