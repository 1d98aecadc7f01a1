import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Money } from '@/app/ui/figures/money';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import type { FairSheet } from '@/lib/fairs/reads';
import type { TakenPiece } from '@/lib/fairs/reads/standing';
import { priceAction } from '../actions';
import css from '../fairs.module.css';

/** What went to a fair and what became of it; under it the prices that hold there. */
export function TakeTable({ sheet: { fair, list } }: Readonly<{ sheet: FairSheet }>) {
  if (list.length === 0) {
    const act = fair.closedAt ? null : (
      <ButtonLink href={`/fairs/${fair.number}/take`}>Take pieces along</ButtonLink>
    );
    return (
      <Empty title="The van is empty" act={act}>
        Scan the tags of what goes along, one after the other. From then on the pieces are for sale
        at the fair and not at home.
      </Empty>
    );
  }
  return (
    <>
      <Pieces list={list} />
      {fair.closedAt ? null : <PriceForm fairId={fair.id} list={list} />}
    </>
  );
}

function Pieces({ list }: Readonly<{ list: readonly TakenPiece[] }>) {
  const sum = (part: 'out' | 'sold' | 'back' | 'lost' | 'there') =>
    list.reduce((all, piece) => all + piece[part], 0);
  return (
    <Table
      caption="What went along and what became of it"
      captionHeardOnly
      columns={[
        { name: 'Piece' },
        { name: 'Price there', figure: true },
        { name: 'Out', figure: true },
        { name: 'Sold', figure: true },
        { name: 'Back', figure: true },
        { name: 'Lost', figure: true, wideOnly: true },
        { name: 'There', figure: true },
      ]}
      rows={list.map((piece) => ({
        key: piece.skuId,
        cells: [
          <PieceName key="piece" piece={piece} />,
          <Money key="price" cents={piece.fairPriceCents ?? piece.homePriceCents} />,
          ...[piece.out, piece.sold, piece.back, piece.lost, piece.there],
        ],
      }))}
      foot={['Together', '', sum('out'), sum('sold'), sum('back'), sum('lost'), sum('there')]}
    />
  );
}

function PieceName({ piece }: Readonly<{ piece: TakenPiece }>) {
  const { sku, title, size, numbers } = piece;
  const numbered = numbers.length === 0 ? '' : ` · number ${numbers.join(', ')}`;
  return (
    <>
      <Link href={`/stock/${sku}`}>
        <cite>{title}</cite>
      </Link>
      <span className={css['quiet']}>
        {size} · {sku}
        {numbered}
      </span>
    </>
  );
}

function PriceForm({ fairId, list }: Readonly<{ fairId: string; list: readonly TakenPiece[] }>) {
  const options = list.map(({ skuId, title, size, sku }) => ({
    value: skuId,
    label: `${title}, ${size} (${sku})`,
  }));
  return (
    <details>
      <summary>A piece costs something else at this fair</summary>
      <FormFrame action={priceAction} label="The price at this fair">
        <RequestKey />
        <input type="hidden" name="fairId" value={fairId} />
        <Field name="skuId" label="Piece" kind="select" options={options} />
        <Field
          name="price"
          label="Price there"
          kind="money"
          width="short"
          hint="Leave it empty, and it costs there what it costs at home."
        />
        <SubmitButton>Set the price</SubmitButton>
      </FormFrame>
    </details>
  );
}
