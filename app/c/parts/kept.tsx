import { Notice } from '@/app/ui/page/notice';
import { formatDay, type Day } from '@/lib/dates/rules';
import css from '../page.module.css';

type KeptProps = Readonly<{ said: string; by: string; on: Day; sha256: string; next: string }>;

/** What was kept of a decision: what was said, by whom, when, under which words, and what is next. */
export function Kept({ said, by, on, sha256, next }: KeptProps) {
  return (
    <Notice kind="done" title={said}>
      <p className={css['kept']}>
        {by}, {formatDay(on, 'long')}. It stands under exactly this content, whose mark is{' '}
        <code>{sha256.slice(0, 12)}</code>.
      </p>
      <p>{next}</p>
    </Notice>
  );
}
