'use client';

import { useId } from 'react';
import { classes } from '@/app/ui/classes';
import { Control } from '@/app/ui/form/control';
import type { FieldProps } from '@/app/ui/form/field-props';
import { useFieldAnswer } from '@/app/ui/form/form-answer';
import { describedBy, Fault, Hint } from '@/app/ui/form/said';
import css from './form.module.css';

/**
 * One question of a form: its label above, a hint under the label, and what is wrong with the
 * answer, all tied to the control. Keeps what was typed when the form comes back.
 */
export function Field(props: FieldProps) {
  const id = useId();
  const answer = useFieldAnswer(props.name);
  const fault = answer.fault ?? props.fault;
  const typed = answer.typed ?? props.defaultValue;
  return (
    <div className={classes(css['field'], css[props.width ?? 'full'])}>
      <label htmlFor={id} className={classes(css['label'], props.labelHeardOnly && 'heard-only')}>
        {props.label}
        {props.optional ? <span className={css['optional']}> if you like</span> : null}
      </label>
      <Hint id={id} hint={props.hint} />
      <Control
        {...props}
        key={typed}
        id={id}
        defaultValue={typed}
        describedBy={describedBy(id, { hint: props.hint, fault })}
        faulty={Boolean(fault)}
      />
      <Fault id={id} fault={fault} />
    </div>
  );
}
