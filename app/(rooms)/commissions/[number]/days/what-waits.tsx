import { InstantText } from '@/app/ui/figures/day-text';
import { Caution } from '@/app/ui/page/caution';
import { formatDay } from '@/lib/dates/rules';
import type { FreeTimes } from '@/lib/installation/reads/offers/free';

type WhatWaitsProps = Readonly<{ found: FreeTimes; zone: string }>;

/** What the free times had to wait for: the studio, and the adhesive. */
export function WhatWaits({ found, zone }: WhatWaitsProps) {
  const { ready, curesAt } = found;
  return (
    <>
      {ready ? (
        <Caution>
          {ready.readyOn === null
            ? 'Nobody can say yet when the studio has it ready, so no times are proposed. A day by hand is asked about.'
            : `The studio has it ready by ${formatDay(ready.readyOn, 'long')} in ${ready.inHundred} of 100; no time before that is proposed.`}
        </Caution>
      ) : null}
      {curesAt ? (
        <Caution>
          The adhesive cures until <InstantText at={curesAt} zone={zone} />. Nothing hangs before
          that.
        </Caution>
      ) : null}
    </>
  );
}
