import type { Metadata } from 'next';
import { Button } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { raiseWishInput, type RaiseWish } from '@/lib/catalogue/input/prices';
import { listRaiseChoices, previewRaise } from '@/lib/catalogue/reads/prices';
import { raisedMost, type RaiseShown } from '@/lib/catalogue/reads/raise';
import { pieceKinds } from '@/lib/catalogue/rules';
import { priceRefusalMessage, priceSteps } from '@/lib/catalogue/rules/prices';
import { dayInput } from '@/lib/dates/input';
import { dayOf, type Day } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { raiseMany } from '../actions';
import css from '../prices.module.css';

export const metadata: Metadata = { title: 'Many prices at once' };

type ManyPageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** How many of the new prices are shown before the yes. */
const shownMost = 300;

/** Raises many prices by one percentage: first what they would be, then the yes. */
export default async function ManyPricesPage({ searchParams }: ManyPageProps) {
  const actor = await requireActor('catalogue.price');
  const asked = await searchParams;
  const gallery = await getGallery();
  const todayOn = dayOf(now(), gallery.timeZone);
  const fromOn = dayInput.catch(todayOn).parse(asked['fromOn'] ?? todayOn);
  const read = raiseWishInput.safeParse(asked);
  const shown = read.success ? await previewRaise(actor, read.data, fromOn) : null;
  const fault =
    read.success || asked['percent'] === undefined ? undefined : read.error.issues[0]?.message;
  const choices = await listRaiseChoices(actor);
  return (
    <>
      <PageHead
        title="Many prices at once"
        back={{ href: '/prices', name: 'Prices and tags' }}
        lead="By one percentage, rounded to a price that reads well. Seconds keep their own prices."
      />
      <WishForm
        asked={asked}
        fromOn={fromOn}
        fault={fault}
        choices={choices}
        unit={gallery.lengthUnit}
      />
      {read.success && shown ? (
        <Shown wish={read.data} shown={shown} fromOn={fromOn} unit={gallery.lengthUnit} />
      ) : null}
    </>
  );
}

type WishProps = Readonly<{
  asked: Record<string, string | string[]>;
  fromOn: Day;
  fault: string | undefined;
  choices: Awaited<ReturnType<typeof listRaiseChoices>>;
  unit: LengthSystem;
}>;

function WishForm({ asked, fromOn, fault, choices, unit }: WishProps) {
  const said = (name: string) => {
    const value = asked[name];
    return typeof value === 'string' ? value : undefined;
  };
  const all = { value: '', label: 'All' };
  const kinds = pieceKinds.map(({ kind, several }) => ({ value: kind, label: several }));
  const designs = choices.designs.map(({ id, title }) => ({ value: id, label: title }));
  const sizes = choices.sizes.map(({ widthUm, heightUm }) => ({
    value: `${widthUm}x${heightUm}`,
    label: formatSize({ widthUm, heightUm, depthUm: null }, unit),
  }));
  const steps = priceSteps.map(({ key, words }) => ({ value: key, label: words }));
  const select = { kind: 'select' } as const;
  return (
    <form action="/prices/many" className={css['wish']}>
      <Field
        {...select}
        name="kind"
        label="Kind"
        options={[all, ...kinds]}
        defaultValue={said('kind')}
      />
      <Field
        {...select}
        name="size"
        label="Size"
        options={[all, ...sizes]}
        defaultValue={said('size')}
      />
      <Field
        {...select}
        name="designId"
        label="Design"
        options={[all, ...designs]}
        defaultValue={said('designId')}
      />
      <Field
        name="percent"
        label="By how much"
        kind="percent"
        unit="%"
        hint="4.5 for more, -10 for less"
        defaultValue={said('percent')}
        fault={fault}
        required
      />
      <Field
        {...select}
        name="step"
        label="Rounded"
        options={steps}
        defaultValue={said('step') ?? 'whole'}
      />
      <Field name="fromOn" label="From" kind="day" defaultValue={fromOn} />
      <Button type="submit" variant="quiet">
        Show the new prices
      </Button>
    </form>
  );
}

type ShownProps = Readonly<{ wish: RaiseWish; shown: RaiseShown; fromOn: Day; unit: LengthSystem }>;

function Shown({ wish, shown, fromOn, unit }: ShownProps) {
  const { prices, sha256 } = shown;
  if (prices.length === 0) {
    return <Notice kind="caution">{priceRefusalMessage({ code: 'no_pieces_meant' })}</Notice>;
  }
  if (prices.length > raisedMost) {
    const words = priceRefusalMessage({ code: 'too_many_pieces', most: raisedMost });
    return <Notice kind="caution">{words}</Notice>;
  }
  const count = prices.length === 1 ? 'One price changes' : `${prices.length} prices change`;
  return (
    <Section title={count}>
      <Table
        caption="The new prices"
        captionHeardOnly
        columns={[
          { name: 'Piece' },
          { name: 'Size', wideOnly: true },
          { name: 'Now', figure: true },
          { name: 'Then', figure: true },
        ]}
        rows={prices.slice(0, shownMost).map((price) => ({
          key: price.skuId,
          cells: [
            `${price.title}, ${price.colourway} · ${price.code}`,
            formatSize({ ...price, depthUm: null }, unit),
            <Money key="now" cents={price.priceCents} />,
            <Money key="then" cents={price.newCents} />,
          ],
        }))}
      />
      {prices.length > shownMost ? (
        <p>
          The first {shownMost} of {prices.length}.
        </p>
      ) : null}
      <FormFrame action={raiseMany} label="Set these prices">
        <RequestKey />
        {Object.entries({ ...wish, fromOn, shownSha256: sha256 }).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value ?? ''} />
        ))}
        <Field name="reason" label="Why" maxLength={200} optional />
        <SubmitButton size="counter">Set these {prices.length}</SubmitButton>
      </FormFrame>
    </Section>
  );
}
