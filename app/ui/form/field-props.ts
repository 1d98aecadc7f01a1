import type { HTMLInputAutoCompleteAttribute } from 'react';

/** What a field asks for; it decides the keyboard a phone brings up and how the field is drawn. */
export type FieldKind =
  | 'text'
  | 'search'
  | 'money'
  | 'measure'
  | 'count'
  | 'percent'
  | 'day'
  | 'month'
  | 'time'
  | 'email'
  | 'telephone'
  | 'password'
  | 'textarea'
  | 'select'
  | 'file';

/** One choice of a select or of a {@link Choice}. */
export type FieldOption = Readonly<{ value: string; label: string; hint?: string | undefined }>;

/** The props of a Field. `unit` stands inside the field at the right, such as "in" or "lb". */
export type FieldProps = Readonly<{
  name: string;
  label: string;
  kind?: FieldKind | undefined;
  hint?: string | undefined;
  fault?: string | undefined;
  defaultValue?: string | undefined;
  required?: boolean | undefined;
  optional?: boolean | undefined;
  options?: readonly FieldOption[] | undefined;
  unit?: string | undefined;
  rows?: number | undefined;
  accept?: string | undefined;
  multiple?: boolean | undefined;
  autoComplete?: HTMLInputAutoCompleteAttribute | undefined;
  autoFocus?: boolean | undefined;
  maxLength?: number | undefined;
  placeholder?: string | undefined;
  list?: string | undefined;
  width?: 'full' | 'half' | 'short' | undefined;
  size?: 'plain' | 'counter' | undefined;
  labelHeardOnly?: boolean | undefined;
}>;
