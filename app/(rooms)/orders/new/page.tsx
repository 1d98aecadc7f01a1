import type { Metadata } from 'next';
import { Empty } from '@/app/ui/page/empty';
import { FindForm } from '@/app/ui/form/find-form';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Hung, PieceHanging, Wall } from '@/app/ui/piece/piece-hanging';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { orderWishInput } from '@/lib/orders/input';
import { previewOrder } from '@/lib/orders/reads/preview';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { findPieces, type Piece } from '@/lib/stock/reads';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { ForWhomIsIt } from './for-whom';
import { OrderForm } from './order-form';
import { SaidBefore } from './said-before';
import { WishForm } from './wish-form';

export const metadata: Metadata = { title: 'Take an order' };

type NewOrderProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** Takes a special order: which piece, how it is wanted, what is said before, then for whom. */
export default async function NewOrderPage({ searchParams }: NewOrderProps) {
  const actor = await requireActor('orders.take');
  const wish = orderWishInput.parse(await searchParams);
  const gallery = await getGallery();
  const todayOn = dayOf(now(), gallery.timeZone);
  const asked = { ...wish, colourwayId: wish.colourway };
  const shown = wish.sku === '' ? null : await previewOrder(actor, wish.sku, asked, todayOn);
  if (!shown) {
    const found = wish.find === '' ? [] : await findPieces(actor, wish.find);
    return (
      <>
        <PageHead
          title="Take an order"
          back={{ href: '/orders', name: 'Special orders' }}
          lead="First the piece that it is like."
        />
        <FindForm action="/orders/new" label="Which piece" letters={wish.find} />
        <Found found={found} find={wish.find} system={gallery.lengthUnit} />
      </>
    );
  }
  return (
    <>
      <PageHead
        title={`Like ${shown.piece.title}`}
        back={{ href: '/orders/new', name: 'Another piece' }}
        lead={`${shown.piece.what} · ${shown.piece.code}`}
      />
      <WishForm wish={wish} shown={shown} unit={gallery.lengthUnit} />
      <Section title="Say this before any money is taken">
        <SaidBefore said={shown.before.said} />
      </Section>
      <Section title="Whose order it is">
        <ForWhomIsIt actor={actor} wish={wish} />
      </Section>
      <OrderForm actor={actor} wish={wish} shown={shown} />
    </>
  );
}

type FoundProps = Readonly<{ found: readonly Piece[]; find: string; system: LengthSystem }>;

function Found({ found, find, system }: FoundProps) {
  const orderable = found.filter((each) => each.grade === 'first' && each.making === 'open_stock');
  if (find !== '' && orderable.length === 0) {
    return (
      <Empty title="Nothing like that is made to order">
        One-offs, editions and seconds are not made again. Three letters of a title are enough.
      </Empty>
    );
  }
  return (
    <Wall label="Pieces found" spacing="close">
      {orderable.map((piece) => (
        <Hung key={piece.id}>
          <PieceHanging
            picture={piece.picture}
            title={piece.title}
            href={`/orders/new?sku=${piece.code}`}
            what={piece.what}
            size={formatSize(piece, system)}
            code={piece.code}
            priceCents={piece.priceCents}
            count={piece.onHand}
          />
        </Hung>
      ))}
    </Wall>
  );
}
