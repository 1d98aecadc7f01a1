import 'server-only';
import type { z } from 'zod';
import type { FormAction, FormState } from '@/app/ui/form-state';
import { fieldWords } from '@/app/form-words';
import { findActor } from '@/lib/access/reads';
import { allow, notAllowedMessage, type Doer, type Permission } from '@/lib/access/rules';
import { now } from '@/lib/platform/clock';
import type { Result } from '@/lib/platform/result';

type Refused = Extract<FormState, { kind: 'refused' }>;
type Done = Extract<FormState, { kind: 'done' }>;
/** A refusal in words: one sentence, and where it helps, a sentence at a field. */
export type RefusalWords = string | { message: string; fields: Record<string, string> };

/**
 * Makes a server action: whoever sent the form must be signed in and hold the permission, and the
 * form must read as the schema says; only then `act` is called.
 *
 * A name that comes more than once becomes a list; a file stays a File; a file field left empty is
 * left out. What is wrong is told by field, and what was typed is kept, except for passwords.
 */
export function formAction<Schema extends z.ZodType>(
  permission: Permission,
  schema: Schema,
  act: (doer: Doer, input: z.output<Schema>) => Promise<FormState>,
): FormAction {
  return async (_previous, form) => {
    const actor = await findActor();
    if (!actor) return keepTyped(signedOut, form);
    const may = allow(actor, permission);
    if (!may.ok) return keepTyped(refused(notAllowedMessage(may.refusal)), form);
    const read = readForm(schema, form);
    if (read.kind === 'refused') return read;
    return keepTyped(await act({ actor, at: now() }, read.input), form);
  };
}

/**
 * Makes a server action for the door itself, where nobody is signed in yet: signing in and the
 * first run. Everything else is made by {@link formAction}.
 */
export function doorAction<Schema extends z.ZodType>(
  schema: Schema,
  act: (at: Date, input: z.output<Schema>) => Promise<FormState>,
): FormAction {
  return async (_previous, form) => {
    const read = readForm(schema, form);
    if (read.kind === 'refused') return read;
    return keepTyped(await act(now(), read.input), form);
  };
}

/** Turns what a write answered into what the form shows. */
export function answer<Value, Refusal>(
  result: Result<Value, Refusal>,
  refusalMessage: (refusal: Refusal) => RefusalWords,
  done: (value: Value) => Done,
): FormState {
  return result.ok ? done(result.value) : refused(refusalMessage(result.refusal));
}

/** A refusal as a form shows it. */
export function refused(words: RefusalWords): Refused {
  const { message, fields } = typeof words === 'string' ? { message: words, fields: {} } : words;
  return { kind: 'refused', message, fields, submitted: {} };
}

const signedOut = refused(
  'You were signed out in the meantime. Sign in again in another window, then send this once more.',
);

type Read<Input> = { kind: 'read'; input: Input } | Refused;

function readForm<Schema extends z.ZodType>(
  schema: Schema,
  form: FormData,
): Read<z.output<Schema>> {
  const read = schema.safeParse(plainObject(form), { error: fieldWords });
  if (read.success) return { kind: 'read', input: read.data };
  const fields: Record<string, string> = {};
  for (const { path, message } of read.error.issues) fields[path.join('.')] ??= message;
  return keepTyped(refused({ message: headline(fields, form), fields }), form);
}

/** A fault of something that is not a field of the form is told at its head. */
function headline(fields: Record<string, string>, form: FormData): string {
  const unseen = Object.keys(fields).find((name) => name === '' || name === 'requestKey');
  if (unseen !== undefined) return fields[unseen] ?? '';
  const lost = Object.entries(fields).find(([name]) => !form.has(name) && name.includes('.'));
  if (lost) return lost[1];
  return 'Not yet: please look again at what is marked below.';
}

function plainObject(form: FormData): Record<string, unknown> {
  const read: Record<string, unknown> = {};
  for (const name of new Set(form.keys())) {
    if (isOfTheFramework(name)) continue;
    const values = form.getAll(name).filter((value) => !isEmptyFile(value));
    if (values.length > 0) read[name] = values.length === 1 ? values[0] : values;
  }
  return read;
}

function keepTyped<State extends FormState>(state: State, form: FormData): State {
  if (state.kind !== 'refused') return state;
  const submitted: Record<string, string> = {};
  for (const name of new Set(form.keys())) {
    if (isOfTheFramework(name) || /password/i.test(name)) continue;
    const typed = form.getAll(name).filter((value) => typeof value === 'string');
    if (typed.length > 0) submitted[name] = typed.join(',');
  }
  return { ...state, submitted };
}

/** Next adds fields of its own to a form that is sent without JavaScript. */
function isOfTheFramework(name: string): boolean {
  return name.startsWith('$ACTION');
}

/** A field without a choice comes without a name; where a page sends it itself, as one of these. */
const namesOfNoChoice = ['', 'undefined', 'blob'];

function isEmptyFile(value: FormDataEntryValue): boolean {
  return value instanceof File && value.size === 0 && namesOfNoChoice.includes(value.name);
}
