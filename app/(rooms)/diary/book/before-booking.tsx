import { WallNotKnown } from '@/app/ui/diary/wall-not-known';
import { InstantText } from '@/app/ui/figures/day-text';
import { Caution } from '@/app/ui/page/caution';
import { Notice } from '@/app/ui/page/notice';
import type { Actor } from '@/lib/access/rules';
import { formatDay } from '@/lib/dates/rules';
import type { Bookable } from '@/lib/installation/reads';
import { findBeforeBooking } from '@/lib/installation/reads/diary/before-booking';
import { enoughHands } from '@/lib/installation/rules/crew/enough';
import type { ReadyBy } from '@/lib/installation/rules/diary/questions';
import { getGallery } from '@/lib/platform/settings';

type BeforeBookingProps = Readonly<{ commission: Bookable; actor: Actor }>;

/** What is known of a commission before a day is booked: its wall, when it is ready, its weight. */
export async function BeforeBooking({ commission, actor }: BeforeBookingProps) {
  if (commission.isHandedOver) return null;
  const { ready, hangsOn, weight, isCuring } = await findBeforeBooking(actor, commission.id);
  const { timeZone, lengthUnit } = await getGallery();
  const hands = enoughHands(weight, null, lengthUnit === 'in' ? 'lb' : 'kg');
  return (
    <>
      {hangsOn.isWallKnown ? null : <WallNotKnown number={commission.number} />}
      {isCuring && hangsOn.curesAt ? (
        <Notice kind="caution">
          The adhesive cures until <InstantText at={hangsOn.curesAt} zone={timeZone} />. Nothing
          hangs before that.
        </Notice>
      ) : null}
      {ready ? <Notice kind="caution">{readyWords(ready)}</Notice> : null}
      {hands ? <Caution>{hands} Common practice; the load decides, not the clock.</Caution> : null}
    </>
  );
}

function readyWords({ readyOn, inHundred }: ReadyBy): string {
  if (readyOn === null) return 'Nobody can say yet when the studio has it ready.';
  return `The studio has it ready by ${formatDay(readyOn, 'long')} in ${inHundred} of 100.`;
}
