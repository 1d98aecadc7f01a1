import type { ComponentProps } from 'react';
import { classes } from '@/app/ui/classes';
import type { FieldKind, FieldProps } from '@/app/ui/form/field-props';
import css from './form.module.css';

type ControlProps = FieldProps &
  Readonly<{ id: string; describedBy: string | undefined; faulty: boolean }>;

type InputKind = Exclude<FieldKind, 'textarea' | 'select'>;
type InputShape = Pick<ComponentProps<'input'>, 'type' | 'inputMode' | 'autoCapitalize'>;

const shapes: Readonly<Record<InputKind, InputShape>> = {
  text: { type: 'text' },
  search: { type: 'search', autoCapitalize: 'off' },
  money: { type: 'text', inputMode: 'decimal' },
  measure: { type: 'text' },
  count: { type: 'text', inputMode: 'numeric' },
  percent: { type: 'text', inputMode: 'decimal' },
  day: { type: 'date' },
  month: { type: 'month' },
  time: { type: 'time' },
  email: { type: 'email', autoCapitalize: 'off' },
  telephone: { type: 'tel' },
  password: { type: 'password' },
  file: { type: 'file' },
};

const figureKinds: readonly FieldKind[] = ['money', 'count', 'percent', 'measure'];

/** The control inside a Field: an input, a text area or a select, pressed into the clay. */
export function Control(props: ControlProps) {
  const { kind = 'text' } = props;
  if (kind === 'textarea') {
    return (
      <textarea {...sharedBy(props)} rows={props.rows ?? 4} maxLength={props.maxLength ?? 4000} />
    );
  }
  if (kind === 'select') {
    return (
      <select {...sharedBy(props)}>
        {(props.options ?? []).map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    );
  }
  return <Input {...props} kind={kind} />;
}

function Input(props: Omit<ControlProps, 'kind'> & Readonly<{ kind: InputKind }>) {
  const { kind } = props;
  const input = (
    <input
      {...sharedBy(props)}
      {...shapes[kind]}
      {...(kind === 'file' ? { defaultValue: undefined } : {})}
      accept={props.accept}
      multiple={props.multiple}
      autoComplete={props.autoComplete}
      maxLength={props.maxLength}
      placeholder={props.placeholder}
      list={props.list}
      data-figure={figureKinds.includes(kind) || undefined}
    />
  );
  const unit = unitOf(kind, props.unit);
  if (!unit) return input;
  return (
    <span className={css['with-unit']} data-before={kind === 'money' || undefined}>
      <span className={css['unit']}>{unit}</span>
      {input}
    </span>
  );
}

function unitOf(kind: InputKind, unit: string | undefined): string | undefined {
  if (kind === 'money') return unit ?? '$';
  return kind === 'percent' ? '%' : unit;
}

function sharedBy(props: Omit<ControlProps, 'kind'>) {
  return {
    id: props.id,
    name: props.name,
    required: props.required,
    defaultValue: props.defaultValue,
    'aria-describedby': props.describedBy,
    'aria-invalid': props.faulty || undefined,
    autoFocus: props.autoFocus,
    className: classes(css['control'], props.size === 'counter' && css['counter']),
  };
}
