'use client';

import { useId, useState } from 'react';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { howManyToStart, type Start, type StepLoss } from '@/lib/studio/rules/losses/start';
import { startWords } from '@/lib/studio/rules/losses/words';
import css from '../studio.module.css';

/** A way to choose: its name, how long it takes, and what it loses on the way. */
export type WayToMake = Readonly<{
  routeId: string;
  name: string;
  hint: string;
  losses: readonly StepLoss[];
}>;

type HowManyProps = Readonly<{
  ways: readonly WayToMake[];
  chosen: string | undefined;
  wanted: string | undefined;
  certaintyPercent: string;
}>;

/** Which way, how many are to come out good, and how many to begin so that they do. */
export function HowMany({ ways, chosen, wanted, certaintyPercent }: HowManyProps) {
  const [routeId, setRouteId] = useState(chosen ?? '');
  const [good, setGood] = useState(wanted ?? '');
  const said = useId();
  const start = toStart(
    ways.find((one) => one.routeId === routeId),
    good,
    certaintyPercent,
  );
  return (
    <div
      className={css['how-many']}
      onChange={({ target }) => {
        if (!(target instanceof HTMLInputElement)) return;
        if (target.name === 'routeId') setRouteId(target.value);
        if (target.name === 'wanted') setGood(target.value.trim());
      }}
    >
      <Choice
        name="routeId"
        legend="How"
        options={ways.map(({ routeId: value, name, hint }) => ({ value, label: name, hint }))}
        defaultValue={chosen}
        size="counter"
      />
      <Field
        name="wanted"
        label="How many are to come out good"
        kind="count"
        width="short"
        size="counter"
        defaultValue={wanted}
        required
      />
      <p role="status" id={said} className={css['start']}>
        {start ? startWords(Number(good), start) : null}
      </p>
      <Field
        key={start?.start ?? 'none'}
        name="pieces"
        label="How many to begin"
        hint="With the spare ones: a few crack on the way."
        kind="count"
        width="short"
        size="counter"
        defaultValue={start ? String(start.start) : undefined}
        required
      />
    </div>
  );
}

/** How many to begin; null while it is not said which way and how many. */
function toStart(way: WayToMake | undefined, good: string, certaintyPercent: string): Start | null {
  if (!way || !/^[1-9]\d{0,3}$/.test(good)) return null;
  const asked = { good: Number(good), steps: way.losses, certaintyPercent };
  const start = howManyToStart(asked);
  return start.ok ? start.value : null;
}
