import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import type { TaxPlaceTold } from '@/lib/commissions/reads/tax-places';
import { taxWays, taxWayWords, type CommissionTaxAs } from '@/lib/commissions/rules/agreement/tax';
import { plainCents } from '@/lib/money/rules';
import { WhereSigned } from './where-signed';

type AgreementQuestionsProps = Readonly<{
  sheet: Sheet;
  places: readonly TaxPlaceTold[];
  /** How the accepted proposal says the tax looks at it. */
  proposedAs?: CommissionTaxAs | undefined;
}>;

/** Price, deposit, tax place, promised day, who agreed and where. */
export function AgreementQuestions({ sheet, places, proposedAs }: AgreementQuestionsProps) {
  const { agreement, gallery, telling, collector } = sheet;
  return (
    <>
      <Field
        name="priceCents"
        label="Price before tax"
        kind="money"
        width="short"
        defaultValue={agreement ? plainCents(agreement.priceCents) : ''}
      />
      <Choice
        name="depositAs"
        legend="The deposit is"
        defaultValue={agreement ? 'amount' : 'percent'}
        options={[
          { value: 'percent', label: 'a share, in percent of the price with its tax' },
          { value: 'amount', label: 'an amount' },
        ]}
      />
      <Field
        name="depositText"
        label="How much"
        hint="50 for half, or the amount; 0 for none. It comes in before the clay is begun."
        width="short"
        defaultValue={agreement ? plainCents(agreement.depositCents) : '50'}
      />
      <Field
        name="taxPlaceId"
        label="Sales tax of"
        hint="Of the place where the piece is handed over. A tax adviser decides."
        kind="select"
        defaultValue={agreement?.taxPlaceId ?? gallery.taxPlaceId}
        options={places.map(({ id, name, rate }) => ({ value: id, label: `${name}, ${rate}` }))}
      />
      <Field
        name="taxAs"
        label="For the tax it is"
        hint="What becomes part of a building can be taxed in another way. A tax adviser decides."
        kind="select"
        defaultValue={proposedAs ?? 'goods_hung'}
        options={taxWays.map((value) => ({ value, label: taxWayWords[value] }))}
      />
      <Field
        name="promisedOn"
        label="Promised for"
        hint="Leave it empty when no day is promised."
        kind="day"
        width="short"
        defaultValue={agreement?.promisedOn ?? ''}
      />
      <Field
        name="agreedBy"
        label="Agreed by"
        hint="Who said yes, as they sign."
        width="half"
        defaultValue={collector.name}
      />
      <Field
        name="agreedOn"
        label="Agreed on"
        kind="day"
        width="short"
        defaultValue={telling.today}
      />
      <WhereSigned legend="Where it was signed" />
    </>
  );
}
