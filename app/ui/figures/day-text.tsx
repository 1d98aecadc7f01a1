import { formatDay, formatInstant, type Day } from '@/lib/dates/rules';

type DayTextProps = Readonly<{
  day: Day;
  /** As people say it, such as "Friday" or "in two weeks"; the full date stands beside it. */
  said?: string | undefined;
  style?: 'long' | 'short' | undefined;
}>;

/** A day, as people say it, with the full date beside. */
export function DayText({ day, said, style = 'short' }: DayTextProps) {
  const full = formatDay(day, style);
  return (
    <time dateTime={day} title={formatDay(day, 'long')}>
      {said ? `${said}, ${full}` : full}
    </time>
  );
}

type InstantTextProps = Readonly<{ at: Date; zone: string }>;

/** A moment, told in the gallery's own time. */
export function InstantText({ at, zone }: InstantTextProps) {
  return <time dateTime={at.toISOString()}>{formatInstant(at, zone)}</time>;
}
