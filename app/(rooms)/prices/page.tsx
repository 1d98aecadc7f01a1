import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { DayText } from '@/app/ui/figures/day-text';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import {
  listPricesToCome,
  listTagsToRewrite,
  type PriceToCome,
} from '@/lib/catalogue/reads/prices';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { callOff } from './actions';
import { TagsToRewrite } from './tags';

export const metadata: Metadata = { title: 'Prices and tags' };

/** What changes when, and which tags are to be written anew. */
export default async function PricesPage() {
  const actor = await requireActor('stock.see');
  const gallery = await getGallery();
  const todayOn = dayOf(now(), gallery.timeZone);
  const [toCome, tags] = await Promise.all([
    listPricesToCome(actor, todayOn),
    listTagsToRewrite(actor, todayOn),
  ]);
  const mayPrice = isAllowed(actor.roles, 'catalogue.price');
  return (
    <>
      <PageHead title="Prices and tags" lead={leadOf(tags.length, toCome.length)}>
        {mayPrice ? (
          <>
            <ButtonLink href="/prices/set">Set a price</ButtonLink>
            <ButtonLink href="/prices/many" variant="quiet">
              Many at once
            </ButtonLink>
          </>
        ) : null}
      </PageHead>
      <InThisRoom room="stock" here="prices" roles={actor.roles} />
      {tags.length === 0 && toCome.length === 0 ? (
        <Empty title="Every tag says its price">
          When the owner sets a price, the tags to write anew hang here until each is ticked off. A
          price can hold from a later day, so that all tags are ready that morning.
        </Empty>
      ) : null}
      {tags.length === 0 ? null : (
        <TagsToRewrite
          tags={tags}
          lengthUnit={gallery.lengthUnit}
          mayTick={isAllowed(actor.roles, 'stock.move')}
        />
      )}
      {toCome.length === 0 ? null : (
        <Section title="Prices to come">
          <ToCome toCome={toCome} mayCallOff={mayPrice} />
        </Section>
      )}
    </>
  );
}

function leadOf(tags: number, toCome: number): string {
  const written =
    tags === 1 ? 'One tag is to be written anew' : `${tags} tags are to be written anew`;
  if (tags > 0) return `${written}.`;
  return toCome === 0
    ? 'Nothing is to be written anew.'
    : 'The tags are right; prices are to come.';
}

type ToComeProps = Readonly<{ toCome: readonly PriceToCome[]; mayCallOff: boolean }>;

function ToCome({ toCome, mayCallOff }: ToComeProps) {
  return (
    <Table
      caption="Prices to come"
      captionHeardOnly
      columns={[
        { name: 'Piece' },
        { name: 'From' },
        { name: 'Now', figure: true },
        { name: 'Then', figure: true },
        { name: 'Why', wideOnly: true },
        ...(mayCallOff ? [{ name: 'Not after all' }] : []),
      ]}
      rows={toCome.map((change) => ({
        key: change.id,
        cells: [
          <span key="piece">
            <Link href={`/stock/${change.code}`}>{change.title}</Link>, {change.colourway} ·{' '}
            {change.code}
          </span>,
          <DayText key="day" day={change.fromOn} />,
          <Money key="now" cents={change.beforeCents} />,
          <Money key="then" cents={change.priceCents} />,
          change.reason === '' ? change.staff : `${change.reason} (${change.staff})`,
          ...(mayCallOff ? [<CallOff key="off" changeId={change.id} code={change.code} />] : []),
        ],
      }))}
    />
  );
}

function CallOff({ changeId, code }: Readonly<{ changeId: string; code: string }>) {
  return (
    <FormFrame action={callOff} label={`Keep the price of ${code}`}>
      <RequestKey />
      <input type="hidden" name="changeId" value={changeId} />
      <SubmitButton variant="quiet">Call it off</SubmitButton>
    </FormFrame>
  );
}
