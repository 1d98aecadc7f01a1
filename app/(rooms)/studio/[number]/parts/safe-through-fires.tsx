import type { ForetoldLast } from '@/lib/studio/reads/parts/map';
import type { SafeThrough } from '@/lib/studio/rules/parts/fates';
import { foretoldWords, safeWords } from '@/lib/studio/rules/parts/words';
import css from './parts.module.css';

type SafeProps = Readonly<{
  fires: readonly SafeThrough[];
  safe: SafeThrough | null;
  foretold: ForetoldLast | null;
}>;

/** How much is safe through which fire, and the days as they were foretold last. */
export function SafeThroughFires({ fires, safe, foretold }: SafeProps) {
  const others = fires.filter((fire) => fire !== safe);
  return (
    <div className={css['safe']}>
      {safe ? <p className={css['safe-most']}>{safeWords(safe)}</p> : null}
      {others.length > 0 ? (
        <p className={css['quiet']}>{others.map(safeWords).join(' · ')}</p>
      ) : null}
      {foretold ? <p>{foretoldWords(foretold)}</p> : null}
    </div>
  );
}
