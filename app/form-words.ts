import type { z } from 'zod';

type RawIssue = Parameters<z.core.$ZodErrorMap>[0];

const missing = 'Please fill this in.';
const again = 'Please look at this again.';
const older = 'This page is older than the gallery it writes to. Load it again, please.';

const plainWords = {
  invalid_value: 'Choose one of these.',
  unrecognized_keys: older,
  invalid_union: again,
  invalid_key: again,
  invalid_element: again,
  not_multiple_of: again,
  custom: again,
} as const;

/**
 * Says in a plain sentence what a field still needs, wherever its schema has no sentence of its
 * own.
 */
export function fieldWords(issue: RawIssue): string {
  if (issue.code === 'invalid_type') return issue.input === undefined ? missing : again;
  if (issue.code === 'too_small') return smallWords(issue);
  if (issue.code === 'too_big') return bigWords(issue);
  if (issue.code === 'invalid_format') return formatWords(issue.format);
  return plainWords[issue.code];
}

function smallWords(issue: Extract<RawIssue, { code: 'too_small' }>): string {
  if (issue.origin === 'string') {
    const least = Number(issue.minimum);
    return least <= 1 ? missing : `Write at least ${least} characters.`;
  }
  if (issue.origin === 'array') return 'Choose at least one.';
  return `At least ${issue.minimum}.`;
}

function bigWords(issue: Extract<RawIssue, { code: 'too_big' }>): string {
  if (issue.origin === 'string') return `At most ${issue.maximum} characters, please.`;
  if (issue.origin === 'array') return `At most ${issue.maximum} of these.`;
  return `At most ${issue.maximum}.`;
}

function formatWords(format: string): string {
  if (format === 'email') return 'Write a mail address, such as wren@example.org.';
  return format === 'uuid' ? older : again;
}
