import { ButtonLink } from '@/app/ui/button/button';
import { PageHead } from '@/app/ui/page/page-head';
import type { CollectorPage } from '@/lib/collectors/reads';
import { collectorKindWords } from '@/lib/collectors/rules';

type HeadProps = Readonly<{
  collector: CollectorPage;
  mayWrite: boolean;
  mayAsk: boolean;
  mayErase: boolean;
}>;

/** Who it is, and what can be done from their card. */
export function Head({ collector, mayWrite, mayAsk, mayErase }: HeadProps) {
  const { id, name } = collector;
  return (
    <PageHead
      title={name}
      lead={kindWords(collector)}
      back={{ href: '/collectors', name: 'Collectors' }}
    >
      {mayAsk ? (
        <ButtonLink href={`/commissions/new?collector=${id}`}>Open a commission</ButtonLink>
      ) : null}
      {mayWrite ? (
        <ButtonLink href={`/collectors/${id}/change`} variant="quiet">
          Change what is known
        </ButtonLink>
      ) : null}
      {mayErase ? (
        <ButtonLink href={`/collectors/${id}/privacy`} variant="quiet">
          What is kept of them
        </ButtonLink>
      ) : null}
    </PageHead>
  );
}

function kindWords({ kind, firm }: CollectorPage): string {
  const words = collectorKindWords[kind];
  const said = words.charAt(0).toUpperCase() + words.slice(1);
  return firm === null ? said : `${said}, ${firm}`;
}
