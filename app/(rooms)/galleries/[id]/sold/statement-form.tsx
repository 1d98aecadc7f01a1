import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Slab } from '@/app/ui/page/section';
import type { GalleryTerms, PieceWithThem } from '@/lib/consignment/reads';
import { bearers } from '@/lib/consignment/rules';
import type { Day } from '@/lib/dates/rules';
import { plainCents } from '@/lib/money/rules';
import type { ReadyPiece } from '@/lib/stock/rules/moves/move';
import { report } from '../../actions';
import css from './statement.module.css';

type StatementFormProps = Readonly<{
  gallery: GalleryTerms;
  ready: readonly ReadyPiece[];
  pieces: readonly PieceWithThem[];
  fromOn: Day;
  untilOn: Day;
}>;

const borneBy = bearers.map(({ bearer, words }) => ({ value: bearer, label: words }));

/** Each piece that they sold, with its day, price and discount; then what is due is worked out. */
export function StatementForm({ gallery, ready, pieces, fromOn, untilOn }: StatementFormProps) {
  return (
    <Slab>
      <FormFrame action={report} label="What they sold">
        <RequestKey />
        <input type="hidden" name="consigneeId" value={gallery.consigneeId} />
        <div className={css['days']}>
          <Field name="fromOn" label="Sold from" kind="day" defaultValue={fromOn} required />
          <Field name="untilOn" label="To" kind="day" defaultValue={untilOn} required />
        </div>
        <ol className={css['lines']}>
          {ready.map((line, place) => (
            <Line
              key={`${line.sku} ${line.number ?? ''}`}
              line={line}
              place={place}
              piece={pieces.find((piece) => piece.sku === line.sku)}
              soldOn={untilOn}
            />
          ))}
        </ol>
        <SubmitButton size="counter" pendingText="Writing the statement…">
          Write the statement
        </SubmitButton>
      </FormFrame>
    </Slab>
  );
}

type LineProps = Readonly<{
  line: ReadyPiece;
  place: number;
  piece: PieceWithThem | undefined;
  soldOn: Day;
}>;

function Line({ line, place, piece, soldOn }: LineProps) {
  const name = (field: string) => `lines.${place}.${field}`;
  const { sku, number, quantity } = line;
  return (
    <li className={css['line']}>
      <fieldset className={css['fields']}>
        <legend>
          <i>{piece?.title ?? sku}</i>, {sku}
          {number === null ? '' : `, number ${number}`}
        </legend>
        <input type="hidden" name={name('sku')} value={sku} />
        <input type="hidden" name={name('number')} value={number ?? ''} />
        <Field
          name={name('quantity')}
          label="Pieces"
          kind="count"
          defaultValue={String(quantity)}
        />
        <Field name={name('soldOn')} label="Sold on" kind="day" defaultValue={soldOn} />
        <Field
          name={name('retail')}
          label="Retail each"
          kind="money"
          defaultValue={piece ? plainCents(piece.retailCents) : ''}
        />
        <Field name={name('discount')} label="Discount" placeholder="38.00 or 10%" />
        <Field
          name={name('borneBy')}
          label="Borne by"
          kind="select"
          options={borneBy}
          defaultValue="nobody"
        />
      </fieldset>
    </li>
  );
}
