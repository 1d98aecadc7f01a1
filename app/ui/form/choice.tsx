'use client';

import { useId } from 'react';
import { classes } from '@/app/ui/classes';
import type { FieldOption } from '@/app/ui/form/field-props';
import { useFieldAnswer } from '@/app/ui/form/form-answer';
import { describedBy, Fault, Hint } from '@/app/ui/form/said';
import css from './form.module.css';

type ChoiceProps = Readonly<{
  name: string;
  legend: string;
  options: readonly FieldOption[];
  defaultValue?: string | undefined;
  hint?: string | undefined;
  fault?: string | undefined;
  /** `tick` lets several be chosen; each sends the same name. */
  kind?: 'one' | 'tick' | undefined;
  size?: 'plain' | 'counter' | undefined;
  layout?: 'row' | 'down' | undefined;
}>;

/** A few answers laid out to be touched: one of them, or as many as apply. */
export function Choice(props: ChoiceProps) {
  const id = useId();
  const answer = useFieldAnswer(props.name);
  const fault = answer.fault ?? props.fault;
  const chosen = (answer.typed ?? props.defaultValue ?? '').split(',');
  const type = props.kind === 'tick' ? 'checkbox' : 'radio';
  return (
    <fieldset
      className={css['choice']}
      aria-describedby={describedBy(id, { hint: props.hint, fault })}
      key={chosen.join(',')}
    >
      <legend className={css['label']}>{props.legend}</legend>
      <Hint id={id} hint={props.hint} />
      <div className={classes(css['options'], props.layout === 'down' && css['down'])}>
        {props.options.map((option) => (
          <label
            key={option.value}
            className={classes(css['option'], props.size === 'counter' && css['counter'])}
          >
            <input
              type={type}
              name={props.name}
              value={option.value}
              defaultChecked={chosen.includes(option.value)}
              aria-invalid={fault ? true : undefined}
            />
            <span>
              {option.label}
              {option.hint ? <small className={css['option-hint']}>{option.hint}</small> : null}
            </span>
          </label>
        ))}
      </div>
      <Fault id={id} fault={fault} />
    </fieldset>
  );
}
