import type { z } from 'zod';

type RawIssue = Parameters<z.core.$ZodErrorMap>[0];

/**
 * Says in a plain sentence what a field still needs, wherever its schema has no sentence of its
 * own.
 */
export function fieldWords(issue: RawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined ? 'Please fill this in.' : 'Please look at this again.';
    case 'too_small':
      return smallWords(issue);
    case 'too_big':
      return bigWords(issue);
    case 'invalid_format':
      return formatWords(issue.format);
    case 'invalid_value':
      return 'Choose one of these.';
    case 'unrecognized_keys':
      return 'This page is older than the gallery it writes to. Load it again, please.';
    default:
      return 'Please look at this again.';
  }
}

function smallWords(issue: Extract<RawIssue, { code: 'too_small' }>): string {
  if (issue.origin === 'string') {
    const least = Number(issue.minimum);
    return least <= 1 ? 'Please fill this in.' : `Write at least ${least} characters.`;
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
  switch (format) {
    case 'email':
      return 'Write a mail address, such as wren@example.org.';
    case 'uuid':
      return 'This page is older than the gallery it writes to. Load it again, please.';
    default:
      return 'Please look at this again.';
  }
}
