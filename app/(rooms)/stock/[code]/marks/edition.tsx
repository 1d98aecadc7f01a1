import Link from 'next/link';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import type { EditionSheet } from '@/lib/catalogue/reads/editions';
import type { MouldShown } from '@/lib/catalogue/reads/mould-rows';
import { numbersWords } from '@/lib/catalogue/rules/edition';
import { castsWords, editionOnMould } from '@/lib/catalogue/rules/moulds';
import { formatDay } from '@/lib/dates/rules';
import { stateAsEdition } from './actions';

/** An edition: where each of its numbers is, and what its mould still gives. */
export function Edition({ edition }: Readonly<{ edition: EditionSheet }>) {
  const { size, artistProofs, places, sold, gone, toCome, statedOn, mould, castsLeft } = edition;
  const said = (numbers: readonly number[]) =>
    numbers.length === 0 ? 'none' : numbersWords(numbers, edition);
  const proofs = artistProofs === 0 ? '' : ` and ${artistProofs} artist’s proofs`;
  const pieces = { pieces: size + artistProofs, came: edition.came };
  const warning = castsLeft === null ? '' : editionOnMould(pieces, castsLeft);
  return (
    <Section
      title={`An edition of ${size}`}
      lead={`${size}${proofs}, stated on ${formatDay(statedOn, 'short')}. That is never raised.`}
    >
      <Facts
        facts={[
          ...places.map(({ place, numbers }) => ({ name: place, value: said(numbers) })),
          { name: 'Sold', value: said(sold) },
          { name: 'Broken or gone', value: said(gone) },
          { name: 'Still to come', value: `${toCome}` },
          {
            name: 'Mould',
            value:
              mould === null ? null : (
                <Link href={`/moulds/${mould}`}>
                  {mould}, {castsWords(castsLeft ?? 0)} left
                </Link>
              ),
            notKnown: 'none written down',
          },
        ]}
      />
      {warning === '' ? null : (
        <Caution>
          {warning} {edition.mouldSaid}
        </Caution>
      )}
    </Section>
  );
}

type StateProps = Readonly<{ skuId: string; moulds: readonly MouldShown[] }>;

/** States an edition, before the first piece comes. */
export function StateEdition({ skuId, moulds }: StateProps) {
  const inUse = moulds.filter(({ retiredOn, kind }) => retiredOn === null && kind === 'working');
  return (
    <details>
      <summary>State it as an edition</summary>
      <FormFrame action={stateAsEdition} label="State it as an edition">
        <RequestKey />
        <input type="hidden" name="skuId" value={skuId} />
        <p>How many there will ever be. Said once, before the first piece comes; never raised.</p>
        <Field name="size" label="How many" kind="count" width="short" required />
        <Field
          name="artistProofs"
          label="Artist’s proofs beside them"
          kind="count"
          width="short"
          optional
        />
        {inUse.length === 0 ? null : (
          <Field
            name="mouldId"
            label="From which mould"
            kind="select"
            options={[
              { value: '', label: 'None of them' },
              ...inUse.map((mould) => ({
                value: mould.id,
                label: `${mould.code}, ${castsWords(mould.left)} left`,
              })),
            ]}
            optional
          />
        )}
        <SubmitButton variant="quiet">State it for good</SubmitButton>
      </FormFrame>
    </details>
  );
}
