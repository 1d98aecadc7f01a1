import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FindForm } from '@/app/ui/form/find-form';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { Hung, PieceHanging, Wall } from '@/app/ui/piece/piece-hanging';
import { requireActor } from '@/lib/access/reads';
import { dayOf } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { stockRoomInput } from '@/lib/stock/input';
import { findByCode, findPieces, type Piece } from '@/lib/stock/reads';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { setPrice } from '../actions';

export const metadata: Metadata = { title: 'Set a price' };

type SetPageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** The price of one piece from a day on: first which piece, then how much. */
export default async function SetPricePage({ searchParams }: SetPageProps) {
  const actor = await requireActor('catalogue.price');
  const asked = await searchParams;
  const { find } = stockRoomInput.parse(asked);
  const code = typeof asked['sku'] === 'string' ? asked['sku'] : '';
  const [piece, found, gallery] = await Promise.all([
    code === '' ? null : findByCode(actor, code),
    find === '' ? [] : findPieces(actor, find),
    getGallery(),
  ]);
  return (
    <>
      <PageHead title="Set a price" back={{ href: '/prices', name: 'Prices and tags' }} />
      {piece ? (
        <PriceForm
          piece={piece}
          system={gallery.lengthUnit}
          todayOn={dayOf(now(), gallery.timeZone)}
        />
      ) : (
        <>
          <FindForm action="/prices/set" label="Which piece" letters={find} />
          <Found found={found} find={find} system={gallery.lengthUnit} />
        </>
      )}
    </>
  );
}

type FoundProps = Readonly<{ found: readonly Piece[]; find: string; system: LengthSystem }>;

function Found({ found, find, system }: FoundProps) {
  if (find !== '' && found.length === 0) {
    return (
      <Empty title="Nothing looks like that">
        Three letters of the title are enough, or the SKU on the tag, or the barcode.
      </Empty>
    );
  }
  return (
    <Wall label="Pieces found" spacing="close">
      {found.map((piece) => (
        <Hung key={piece.id}>
          <PieceHanging
            {...labelOf(piece, system)}
            href={`/prices/set?sku=${piece.code}`}
            count={piece.onHand}
          />
        </Hung>
      ))}
    </Wall>
  );
}

function labelOf(piece: Piece, system: LengthSystem) {
  const { picture, title, what, code, priceCents } = piece;
  return { picture, title, what, code, priceCents, size: formatSize(piece, system) };
}

type PriceFormProps = Readonly<{ piece: Piece; system: LengthSystem; todayOn: string }>;

function PriceForm({ piece, system, todayOn }: PriceFormProps) {
  return (
    <>
      <Wall label="The piece" spacing="close">
        <Hung>
          <PieceHanging {...labelOf(piece, system)} href={`/stock/${piece.code}`} />
        </Hung>
      </Wall>
      <FormFrame action={setPrice} label={`Set the price of ${piece.title}`}>
        <RequestKey />
        <input type="hidden" name="skuId" value={piece.id} />
        <Field
          name="priceCents"
          label="Its new price"
          kind="money"
          width="short"
          size="counter"
          defaultValue={plainCents(piece.priceCents)}
          required
        />
        <Field
          name="fromOn"
          label="From"
          kind="day"
          width="short"
          defaultValue={todayOn}
          required
        />
        <Field name="reason" label="Why" maxLength={200} optional />
        <SubmitButton size="counter">Set it</SubmitButton>
      </FormFrame>
    </>
  );
}
