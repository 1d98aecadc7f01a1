import { Choice } from '@/app/ui/form/choice';
import { Notice } from '@/app/ui/page/notice';
import type { ShownWhole } from '@/lib/commissions/reads/colours/shown';
import type { OpenPage } from '../../../open-page';
import { SignForm } from '../../../parts/sign-form';
import { sayYes } from '../../actions';

/** The collector's yes, signed; to a colour only with the tile in their hand. */
export function YesForm({ page, shown }: Readonly<{ page: OpenPage; shown: ShownWhole }>) {
  if (shown.tile && !shown.tile.given) {
    return (
      <Notice kind="caution">
        The tile itself is not in your hands yet. Once it is, you can say yes to it here.
      </Notice>
    );
  }
  return (
    <SignForm
      page={page}
      action={sayYes}
      label="Say yes"
      sha256={shown.contentSha256}
      send={shown.tile ? 'Yes to this colour' : 'Yes to this sketch'}
    >
      <input type="hidden" name="what" value={shown.what} />
      <input type="hidden" name="shownId" value={shown.id} />
      {shown.tile ? (
        <Choice
          name="seenInHand"
          kind="tick"
          legend="In the hand"
          options={[{ value: 'yes', label: 'I looked at the fired tile itself, by daylight' }]}
        />
      ) : null}
    </SignForm>
  );
}
