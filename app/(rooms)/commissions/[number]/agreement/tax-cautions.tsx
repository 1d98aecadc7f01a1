import { Caution } from '@/app/ui/page/caution';
import type { TaxLooked } from '@/lib/commissions/reads/agreement/tax-rules';

/** How the tax looks at a commission: the choice, the rule that was used, and what to mind. */
export function TaxCautions({ looked }: Readonly<{ looked: TaxLooked }>) {
  const { choice, used, cautions } = looked;
  return (
    <>
      <p>
        {choice} {used}
      </p>
      {cautions.length > 0 ? <Caution>{cautions.join(' ')}</Caution> : null}
    </>
  );
}
