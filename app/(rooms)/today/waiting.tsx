import Link from 'next/link';
import { Section } from '@/app/ui/page/section';
import { Picture } from '@/app/ui/piece/picture';
import type { CommissionWaiting } from '@/lib/commissions/reads';
import type { WaitingGroup } from './gathered';
import css from './today.module.css';

/** How many of a group hang on the first page; the rest is a link. */
const hungMost = 6;

const titles: Readonly<Record<WaitingGroup['on'], string>> = {
  gallery: 'The gallery’s turn',
  studio: 'The studio’s turn',
  collector: 'Waiting for the collector',
};

type WaitingProps = Readonly<{
  group: WaitingGroup;
  /** One's own turn hangs large; the others are small beside their words. */
  size: 'large' | 'small';
}>;

/** Commissions that wait on the same party: picture, whose, and the sentence of where it stands. */
export function Waiting({ group, size }: WaitingProps) {
  const { commissions } = group;
  const more = commissions.length - hungMost;
  return (
    <Section
      title={titles[group.on]}
      act={more > 0 ? <Link href="/commissions">{more} more</Link> : null}
    >
      <ul className={css[size]}>
        {commissions.slice(0, hungMost).map((commission) => (
          <li key={commission.number}>
            <CommissionHung commission={commission} />
          </li>
        ))}
      </ul>
    </Section>
  );
}

function CommissionHung({ commission }: Readonly<{ commission: CommissionWaiting }>) {
  const { title, collector, sentence, href, picture } = commission;
  return (
    <Link href={href} className={css['commission']}>
      <span className={css['sight']}>
        {picture ? <Picture {...picture} alt="" size="tall" /> : <span className={css['bare']} />}
      </span>
      <span className={css['words']}>
        <cite className={css['title']}>{title}</cite>
        <span className={css['for']}>for {collector}</span>
        <span className={css['sentence']}>{sentence}</span>
      </span>
    </Link>
  );
}
