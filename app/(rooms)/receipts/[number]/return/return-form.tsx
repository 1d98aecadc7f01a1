import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import { tenderWords } from '@/lib/documents/rules';
import { formatCents } from '@/lib/money/rules';
import { mayGoBack } from '@/lib/returns/rules/refunds';
import { leftOf, type SoldSale } from '@/lib/returns/rules/sold';
import { bringBack } from '../../actions';
import { ReturnLine } from './return-line';

type ReturnFormProps = Readonly<{ sale: SoldSale; feePercent: string }>;

const wholes = [
  { value: 'returned', label: 'It comes back' },
  { value: 'exchanged', label: 'It is exchanged for something else' },
];

/** Which pieces, what becomes of each, why, the fee, and how the money goes back. */
export function ReturnForm({ sale, feePercent }: ReturnFormProps) {
  const out = sale.lines.filter((line) => leftOf(line) > 0);
  const ways = waysOf(sale);
  return (
    <FormFrame action={bringBack} label="Take back">
      <RequestKey />
      <input type="hidden" name="saleNumber" value={sale.number} />
      <Section
        title="What came back"
        lead="Look at each piece before it goes back on the shelf. Tap it: a sound one rings, a cracked one clacks."
      >
        {out.map((line) => (
          <ReturnLine key={line.id} line={line} isAlone={out.length === 1} />
        ))}
      </Section>
      <Section title="The money">
        <Choice
          name="kind"
          legend="What is it"
          options={wholes}
          defaultValue="returned"
          size="counter"
        />
        <Choice
          name="how"
          legend="The money goes back"
          options={ways}
          defaultValue={ways[0]?.value}
          size="counter"
          layout="down"
        />
        <Shares sale={sale} />
        <Field
          name="feePercent"
          label="What we keep of the price"
          hint="The tax goes back in full."
          kind="percent"
          defaultValue={feePercent}
          width="short"
          size="counter"
        />
        <Field name="reason" label="Why it came back" size="counter" maxLength={300} required />
      </Section>
      <SubmitButton size="counter">Take it back</SubmitButton>
    </FormFrame>
  );
}

function waysOf(sale: SoldSale) {
  const back = sale.tenders.filter((tender) => mayGoBack(tender, 'same_way') > 0n);
  const words = back.map(
    (tender) =>
      `${tenderWords[tender.kind].toLowerCase()} (at most ${formatCents(mayGoBack(tender, 'same_way'))})`,
  );
  const same = { value: 'same_way', label: 'As it was paid', hint: words.join(', ') };
  const credit = {
    value: 'store_credit',
    label: 'As store credit',
    hint: 'with a number of its own, to be used at the counter',
  };
  return words.length > 0 ? [same, credit] : [credit];
}

/** For a sale that was paid in several ways: how much goes back in each. */
function Shares({ sale }: Readonly<{ sale: SoldSale }>) {
  if (sale.tenders.length < 2) return null;
  return (
    <details>
      <summary>Share it out yourself</summary>
      {sale.tenders.map((tender) => (
        <Field
          key={tender.id}
          name={`refund.${tender.id}`}
          label={`Of what was paid: ${tenderWords[tender.kind].toLowerCase()}`}
          hint={`At most ${formatCents(tender.amountCents - tender.backCents)}. Leave all empty to share it out evenly.`}
          kind="money"
          width="half"
          optional
        />
      ))}
    </details>
  );
}
