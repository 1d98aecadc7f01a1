const words = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

const steps = [
  { seconds: 86_400, one: 'a day', several: 'days' },
  { seconds: 3_600, one: 'an hour', several: 'hours' },
  { seconds: 60, one: 'a minute', several: 'minutes' },
] as const;

/**
 * How long ago something was, as people say it; rounded down.
 *
 * @example howLongAgo(at, new Date(at.getTime() + 130_000)) // 'two minutes ago'
 */
export function howLongAgo(then: Date, now: Date): string {
  const seconds = Math.floor((now.getTime() - then.getTime()) / 1_000);
  for (const step of steps) {
    const count = Math.floor(seconds / step.seconds);
    if (count === 1) return `${step.one} ago`;
    if (count > 1) return `${words[count] ?? String(count)} ${step.several} ago`;
  }
  return 'just now';
}
