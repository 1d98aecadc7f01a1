import Link from 'next/link';
import { otherNames, type OtherLine } from '@/lib/installation/rules/diary/others';
import css from './views.module.css';

/** What else the gallery has on a day: a quiet line each, which leads to where it is kept. */
export function OtherLines({ lines }: Readonly<{ lines: readonly OtherLine[] }>) {
  if (lines.length === 0) return null;
  return (
    <ul className={css['others']}>
      {lines.map((line) => (
        <li key={`${line.kind} ${line.key}`} data-kind={line.kind}>
          <Link href={line.href} prefetch={false}>
            <span className={css['other-kind']}>{otherNames[line.kind]}</span> {line.words}
          </Link>
        </li>
      ))}
    </ul>
  );
}
