import Link from 'next/link';
import { Section } from '@/app/ui/page/section';
import css from './today.module.css';

/** Something small that wants seeing to, said in one sentence; the page that it leads to. */
export type ToSeeTo = Readonly<{ key: string; href: string; sentence: string }>;

/** Calls to make, tags to write anew, carriers' slips that are missing: a sentence each. */
export function SeeTo({ lines }: Readonly<{ lines: readonly ToSeeTo[] }>) {
  if (lines.length === 0) return null;
  return (
    <Section title="To see to">
      <ul className={css['lines']}>
        {lines.map(({ key, href, sentence }) => (
          <li key={key}>
            <Link href={href} className={css['line']}>
              {sentence}
            </Link>
          </li>
        ))}
      </ul>
    </Section>
  );
}
