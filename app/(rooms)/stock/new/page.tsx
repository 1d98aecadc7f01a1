import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listNames } from '@/lib/catalogue/reads/piece-facts';
import { pieceKinds } from '@/lib/catalogue/rules';
import { makings } from '@/lib/catalogue/rules/making';
import { getGallery } from '@/lib/platform/settings';
import { add } from './actions';

export const metadata: Metadata = { title: 'Write a piece down' };

const making = makings.map(({ making: value, words: label }) => ({ value, label }));
const kinds = pieceKinds.map(({ kind, word }) => ({ value: kind, label: word }));

/** A new piece, by hand: a design that is known or new, in a kind, a size and a colour. */
export default async function NewPiecePage() {
  const actor = await requireActor('catalogue.keep');
  const [{ titles, colourways }, { lengthUnit: unit }] = await Promise.all([
    listNames(actor),
    getGallery(),
  ]);
  return (
    <>
      <PageHead
        title="Write a piece down"
        back={{ href: '/stock', name: 'Stock' }}
        lead="One piece by hand. A whole list is quicker from a file."
      />
      <FormFrame action={add} label="Write a piece down">
        <RequestKey />
        <Field
          name="title"
          label="Its title"
          hint="A design that is known, or a new one."
          list="known-titles"
          maxLength={120}
          required
        />
        <Names id="known-titles" names={titles} />
        <Choice name="kind" legend="What it is" options={kinds} />
        <Field
          name="colourway"
          label="Its glazes"
          list="known-colourways"
          maxLength={120}
          required
        />
        <Names id="known-colourways" names={colourways} />
        <Field name="widthUm" label="Width" kind="measure" unit={unit} width="short" required />
        <Field name="heightUm" label="Height" kind="measure" unit={unit} width="short" required />
        <Field name="depthUm" label="Depth" kind="measure" unit={unit} width="short" optional />
        <Field
          name="weightG"
          label="Weight"
          kind="measure"
          unit={unit === 'in' ? 'lb' : 'kg'}
          width="short"
          optional
        />
        <Field
          name="code"
          label="SKU"
          hint="Such as TERN-10-CEL."
          width="half"
          maxLength={24}
          required
        />
        <Field name="priceCents" label="Price" kind="money" width="short" required />
        <Field name="costCents" label="What making one costs" kind="money" width="short" optional />
        <Choice
          name="making"
          legend="How it is made"
          options={making}
          defaultValue="open_stock"
          hint="An edition is stated on its page, before its first piece comes."
        />
        <Field name="gtin" label="Barcode" width="half" maxLength={20} optional />
        <SubmitButton size="counter">Write it down</SubmitButton>
      </FormFrame>
    </>
  );
}

function Names({ id, names }: Readonly<{ id: string; names: readonly string[] }>) {
  return (
    <datalist id={id}>
      {names.map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
  );
}
