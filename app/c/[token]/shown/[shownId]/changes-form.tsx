import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { PictureShown } from '@/app/ui/piece/picture';
import { SpotMarker } from '@/app/ui/spots/spot-marker';
import type { ShownWhole } from '@/lib/commissions/reads/colours/shown';
import type { Rounds } from '@/lib/commissions/rules/colours/rounds';
import { currencyNamed, formatCents } from '@/lib/money/rules';
import type { OpenPage } from '../../../open-page';
import { ByThisAddress } from '../../../parts/their-act';
import { sayChanges } from '../../actions';
import css from '../../../page.module.css';

type ChangesFormProps = Readonly<{
  page: OpenPage;
  shown: ShownWhole;
  picture: PictureShown;
  rounds: Rounds | null;
}>;

/** What should be otherwise: up to four spots, words, and what a further round costs. */
export function ChangesForm({ page, shown, picture, rounds }: ChangesFormProps) {
  const fee = rounds && rounds.feeCents > 0n ? rounds.feeCents : null;
  const currency = currencyNamed(page.gallery.currency);
  return (
    <section>
      <h2>Ask for changes</h2>
      {rounds ? (
        <p className={css['words']}>
          {rounds.included} rounds of changes are included; this is round {rounds.next}.
        </p>
      ) : null}
      <FormFrame action={sayChanges} label="Ask for changes">
        <RequestKey />
        <ByThisAddress page={page} />
        <input type="hidden" name="what" value={shown.what} />
        <input type="hidden" name="shownId" value={shown.id} />
        <input type="hidden" name="contentSha256" value={shown.contentSha256} />
        <SpotMarker picture={picture} most={4} />
        <Field
          name="words"
          label="What should be otherwise"
          hint="In your own words; the spots are only a help."
          kind="textarea"
          rows={4}
        />
        <Field name="askedBy" label="Your name" defaultValue={page.link.forName} width="half" />
        {fee === null ? null : (
          <Choice
            name="agreesFee"
            kind="tick"
            legend="A further round"
            options={[
              { value: 'yes', label: `I agree to its price, ${formatCents(fee, { currency })}` },
            ]}
          />
        )}
        <SubmitButton variant="quiet">Ask for these changes</SubmitButton>
      </FormFrame>
    </section>
  );
}
