'use client';

import { useState, type ReactNode } from 'react';
import { Field } from '@/app/ui/form/field';
import { useFieldAnswer } from '@/app/ui/form/form-answer';
import type { FieldOption } from '@/app/ui/form/field-props';
import { stepField } from '@/lib/studio/rules/step-fields';
import { cones } from '@/lib/studio/rules/kilns/cones';
import {
  pegs,
  pegWords,
  stepKinds,
  stepKindWords,
  type RouteStep,
} from '@/lib/studio/rules/routes';
import css from './routes.module.css';

type StepRowProps = Readonly<{
  row: string;
  place: number;
  /** What it is so far; null for a new one. */
  step: RouteStep | null;
  benches: readonly FieldOption[];
  acts: ReactNode;
}>;

const pegOptions = pegs.map((value) => ({ value, label: pegWords[value] }));
const kindOptions = stepKinds.map((value) => ({ value, label: stepKindWords[value] }));
const coneOptions = cones.map((value) => ({ value, label: `cone ${value}` }));
const togetherOptions = [
  { value: 'one_by_one', label: 'as they come' },
  { value: 'together', label: 'when all are there' },
];

/** What a new row begins with. */
const blank: RouteStep = {
  ...{ name: '', peg: 'clay', kind: 'work', benchId: null, cone: '04' },
  ...{ shortestDays: 1, likelyDays: 1, longestDays: 2, isTogether: false },
  ...{ lossPercent: '0', minutesEach: '0', caution: '' },
};

/** One step of a route: what it is, what holds the pieces, and for how long. */
export function StepRow({ row, place, step, benches, acts }: StepRowProps) {
  const known = step ?? blank;
  return (
    <fieldset className={css['step']}>
      <legend>Step {place}</legend>
      <WhatHolds row={row} step={known} benches={benches} />
      <HowLong row={row} step={known} />
      <Field
        name={stepField(row, 'caution')}
        label="What to mind there"
        kind="textarea"
        rows={2}
        defaultValue={known.caution}
        optional
      />
      <div className={css['acts']}>{acts}</div>
    </fieldset>
  );
}

type PartProps = Readonly<{ row: string; step: RouteStep }>;

function WhatHolds({ row, step, benches }: PartProps & Pick<StepRowProps, 'benches'>) {
  const kindName = stepField(row, 'kind');
  const typedKind = useFieldAnswer(kindName).typed;
  const [kind, setKind] = useState(typedKind ?? step.kind);
  return (
    <div
      className={css['row']}
      onChange={({ target }) => {
        const isKind = target instanceof HTMLSelectElement && target.name === kindName;
        if (isKind) setKind(target.value);
      }}
    >
      <Field
        name={stepField(row, 'name')}
        label="What is done"
        defaultValue={step.name}
        maxLength={60}
        required
      />
      {select(row, 'peg', { label: 'The pieces are then', options: pegOptions, at: step.peg })}
      {select(row, 'kind', { label: 'What holds them', options: kindOptions, at: step.kind })}
      {kind === 'work'
        ? select(row, 'benchId', { label: 'At which bench', options: benches, at: step.benchId })
        : null}
      {kind === 'fire'
        ? select(row, 'cone', {
            ...{ label: 'To which cone', options: coneOptions },
            at: step.cone === '' ? '04' : step.cone,
          })
        : null}
    </div>
  );
}

function HowLong({ row, step }: PartProps) {
  const together = step.isTogether ? 'together' : 'one_by_one';
  return (
    <div className={css['row']}>
      {days(row, 'shortestDays', 'Shortest days', step.shortestDays)}
      {days(row, 'likelyDays', 'Likely days', step.likelyDays)}
      {days(row, 'longestDays', 'Longest days', step.longestDays)}
      {select(row, 'isTogether', { label: 'They begin', options: togetherOptions, at: together })}
      <Field
        name={stepField(row, 'lossPercent')}
        label="Lost of 100"
        kind="percent"
        defaultValue={step.lossPercent}
      />
      <Field
        name={stepField(row, 'minutesEach')}
        label="Minutes for one"
        kind="measure"
        defaultValue={step.minutesEach}
      />
    </div>
  );
}

type FieldOfStep = Parameters<typeof stepField>[1];

function select(
  row: string,
  field: FieldOfStep,
  of: { label: string; options: readonly FieldOption[]; at: string | null },
) {
  const name = stepField(row, field);
  const { label, options, at } = of;
  return (
    <Field
      key={name}
      name={name}
      label={label}
      kind="select"
      options={options}
      defaultValue={at ?? undefined}
    />
  );
}

function days(row: string, field: FieldOfStep, label: string, known: number) {
  return (
    <Field name={stepField(row, field)} label={label} kind="count" defaultValue={String(known)} />
  );
}
