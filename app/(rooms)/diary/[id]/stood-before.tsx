import { InstantText } from '@/app/ui/figures/day-text';
import { Section } from '@/app/ui/page/section';
import type { AppointmentTold } from '@/lib/installation/reads';
import { wordTitles } from '@/lib/installation/rules/diary/question-names';
import { namesWords, whenWords } from '@/lib/installation/rules/diary/words';
import css from '../diary.module.css';

type StoodBeforeProps = Readonly<{ appointment: AppointmentTold; zone: string }>;

/** What was decided when it was booked or moved, and how it stood before each change. */
export function StoodBefore({ appointment, zone }: StoodBeforeProps) {
  const { words, changes } = appointment;
  return (
    <>
      {words.length > 0 ? (
        <Section title="Decided all the same">
          <ul className={css['lines']}>
            {words.map((word) => (
              <li key={`${word.sequence} ${word.about} ${word.at.toISOString()}`}>
                <strong>{wordTitles[word.about]}</strong>: {word.why}{' '}
                <small>
                  {word.by}, <InstantText at={word.at} zone={zone} />
                </small>
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      {changes.length > 0 ? (
        <Section title="How it stood before">
          <ol className={css['lines']} reversed>
            {changes.map((change) => (
              <li key={change.sequence}>
                {whenWords(change, zone)}, {namesWords(change.names)}; {change.leadName} was to
                lead.
                {change.why === '' ? ' ' : ` ${closed(change.why)} `}
                <small>
                  Changed by {change.by ?? 'the collector'},{' '}
                  <InstantText at={change.at} zone={zone} />
                </small>
              </li>
            ))}
          </ol>
        </Section>
      ) : null}
    </>
  );
}

function closed(words: string): string {
  return /[.!?]$/.test(words) ? words : `${words}.`;
}
