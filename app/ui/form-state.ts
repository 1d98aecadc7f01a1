/**
 * What a form knows after it was sent.
 *
 * `fields` says what is wrong, by the field's name; `submitted` is what the person typed, so that
 * nothing has to be typed twice. `href` leads to what was made.
 */
export type FormState =
  | { kind: 'idle' }
  | {
      kind: 'refused';
      message: string;
      fields: Record<string, string>;
      submitted: Record<string, string>;
    }
  | { kind: 'done'; message: string; href?: string };

/** A form that was not sent yet. */
export const idle: FormState = { kind: 'idle' };

/** A server action as a form calls it. */
export type FormAction = (state: FormState, form: FormData) => Promise<FormState>;
