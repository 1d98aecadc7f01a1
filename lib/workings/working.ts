import type { z } from 'zod';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** What a calculation answers: its figures by key, and the steps as short sentences. */
export type Worked<Output> = { readonly output: Output; readonly working: readonly string[] };

/** One calculation of the tool, by the name it is called with. */
export type Working<Input, Output> = {
  readonly name: string;
  readonly title: string;
  /** What it does, in one sentence of words. */
  readonly formula: string;
  /** The publication it follows, or 'common practice'. */
  readonly source: string;
  /** What to mind before relying on the answer, or nothing. */
  readonly caution: string | null;
  /** An input that can be tried as it stands, in the form of its JSON. */
  readonly example: Readonly<Record<string, unknown>>;
  readonly input: z.ZodType<Input>;
  workOut(input: Input): Worked<Output>;
};

/** A calculation whose input is not known before it is read. */
export type NamedWorking = Omit<Working<never, unknown>, 'input' | 'workOut'> & {
  readonly input: z.ZodType;
  /** Reads the input, refuses it with one line that names the key, or works it out. */
  answer(given: unknown): Result<Answer, string>;
};

/** The answer as it leaves the tool: the figures, the steps, the source and the caution. */
export type Answer = Readonly<Record<string, unknown>> & {
  readonly working: readonly string[];
  readonly source: string;
  readonly caution: string | null;
};

/**
 * Makes a calculation one of the list, where all are called alike.
 *
 * @example named(moneySplit).answer({ cents: 100 }) // refused: weights: must be …
 */
export function named<Input, Output extends object>(working: Working<Input, Output>): NamedWorking {
  return {
    name: working.name,
    title: working.title,
    formula: working.formula,
    source: working.source,
    caution: working.caution,
    example: working.example,
    input: working.input,
    answer: (given) => {
      const read = working.input.safeParse(given);
      if (!read.success) return refuse(faultLine(read.error.issues));
      const { output, working: steps } = working.workOut(read.data);
      const { source, caution } = working;
      return ok({ ...output, working: steps, source, caution });
    },
  };
}

/**
 * What is wrong with an input, in one line that names each key and what it must be.
 *
 * @example 'cents: must be a whole number of cents; colour: is not asked for here'
 */
export function faultLine(issues: readonly z.core.$ZodIssue[]): string {
  return issues
    .flatMap((issue) => {
      const place = placeOf(issue.path);
      if (issue.code !== 'unrecognized_keys') return [`${place || 'input'}: ${issue.message}`];
      return issue.keys.map((key) => `${placeOf([...issue.path, key])}: is not asked for here`);
    })
    .join('; ');
}

function placeOf(path: readonly PropertyKey[]): string {
  return path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`))
    .join('')
    .replace(/^\./, '')
    .replaceAll(/\s+/g, ' ');
}

/**
 * The value of a sum that its input has already been checked for.
 *
 * @throws when it was refused after all: the input check has a gap
 */
export function workedValue<Value>(result: Result<Value, { code: string }>): Value {
  invariant(result.ok, 'An input that was read can be worked out.');
  return result.value;
}

/** How many of a long list a sentence names before it stops. */
const namedMost = 12;

/**
 * A list in a sentence.
 *
 * @example listed(['a', 'b', 'c']) // 'a, b and c'; after twelve it says how many more there are
 */
export function listed(words: readonly string[], joint: 'and' | 'or' = 'and'): string {
  if (words.length > namedMost) {
    return `${words.slice(0, namedMost).join(', ')} and ${words.length - namedMost} more`;
  }
  const last = words.at(-1) ?? 'none';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${joint} ${last}`;
}
