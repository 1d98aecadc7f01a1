import { ButtonLink } from '@/app/ui/button/button';
import css from './stock.module.css';

type LeavesProps = Readonly<{ page: number; pages: number; hrefOf: (page: number) => string }>;

/** The way to the page before and the page after, where there is more than one. */
export function Leaves({ page, pages, hrefOf }: LeavesProps) {
  if (pages < 2) return null;
  return (
    <nav aria-label="Pages" className={css['leaves']}>
      {page > 1 ? (
        <ButtonLink href={hrefOf(page - 1)} variant="quiet">
          Before
        </ButtonLink>
      ) : null}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages ? (
        <ButtonLink href={hrefOf(page + 1)} variant="quiet">
          Next
        </ButtonLink>
      ) : null}
    </nav>
  );
}
