import Link from 'next/link';
import { Notice } from '@/app/ui/page/notice';
import type { StudioFacts } from '@/lib/studio/rules/costs/facts';

/** What every piece wants and nobody has written down yet, with the way there. */
export function RatesMissing({ studio }: Readonly<{ studio: StudioFacts }>) {
  const isHour = studio.centsPerHour === 0n;
  const isGlaze = studio.glazeCentsPerM2 === 0n;
  const isClay = studio.bodies.every(({ centsPerKg }) => centsPerKg === null);
  if (!isHour && !isGlaze && !isClay) return null;
  return (
    <Notice kind="caution" title="Not in these sums yet">
      {isHour || isGlaze ? (
        <>
          {[isHour ? 'the hour of hands' : '', isGlaze ? 'the glaze' : '']
            .filter(Boolean)
            .join(' and ')}
          : written down in the <Link href="/studio/ways">ways of the studio</Link>.{' '}
        </>
      ) : null}
      {isClay ? (
        <>
          What clay costs: written down with the <Link href="/settings/clay">clay bodies</Link>.
        </>
      ) : null}
    </Notice>
  );
}
