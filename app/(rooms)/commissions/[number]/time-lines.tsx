import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Section } from '@/app/ui/page/section';
import type { TimeTold } from '@/lib/commissions/reads/course/time';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { clockWords } from '@/lib/commissions/rules/course/clocks';
import { formatDay } from '@/lib/dates/rules';
import css from '../commissions.module.css';

type TimeLinesProps = Readonly<{ sheet: Sheet; time: TimeTold }>;

/** Whose clock the days ran on, what was lost, and everything that was said about the day. */
export function TimeLines({ sheet, time }: TimeLinesProps) {
  const { acts, number } = sheet;
  const all = time.byClock.reduce((sum, { days }) => sum + days, 0);
  return (
    <Section
      title="Its time"
      id="time"
      act={
        acts.has('delay') && sheet.agreement?.promisedOn ? (
          <ButtonLink href={`/commissions/${number}/delay`} variant="quiet">
            Tell them of another day
          </ButtonLink>
        ) : null
      }
    >
      <p>
        {all === 0
          ? 'It was asked for today.'
          : `${daysWords(all)} so far: ${time.byClock.map(({ clock, days }) => `${days} with ${clockWords[clock]}`).join(', ')}.`}
        {time.kept ? ` It is ${time.kept}.` : ''}
      </p>
      <p className={css['quiet']}>{lostWords(time)}</p>
      {time.said.length > 0 ? (
        <Table
          caption="What was said about the day"
          columns={[{ name: 'Said on' }, { name: 'By what' }, { name: 'Day' }]}
          rows={time.said.map(({ saidOn, words, dayOn, kind }, at) => ({
            key: String(at),
            cells: [
              <DayText key="said" day={saidOn} />,
              words,
              dayOn
                ? `${formatDay(dayOn, 'short')}${kind === 'told' ? ', told' : ''}`
                : 'no day promised',
            ],
          }))}
        />
      ) : null}
      <details>
        <summary>Day by day, whose clock ran</summary>
        <ol className={css['lines']}>
          {time.spans.map(({ clock, fromOn, days }) => (
            <li key={fromOn}>
              From <DayText day={fromOn} />, {daysWords(days)}: {clockWords[clock]}
            </li>
          ))}
        </ol>
      </details>
    </Section>
  );
}

function lostWords({ lost, answerDays }: TimeTold): string {
  if (lost.length === 0) {
    return `No days were lost: no notice of delay, and no answer took more than ${answerDays} days.`;
  }
  const each = lost.map(({ clock, days }) => `${daysWords(days)} by ${clockWords[clock]}`);
  return `Lost: ${each.join(', ')}. Counted are notices of delay, and answers beyond ${answerDays} days.`;
}

function daysWords(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}
