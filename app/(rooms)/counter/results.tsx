import { Money } from '@/app/ui/figures/money';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Mark } from '@/app/ui/piece/mark';
import { Picture } from '@/app/ui/piece/picture';
import type { KeptSet } from '@/lib/catalogue/rules/sets';
import type { Piece } from '@/lib/stock/reads';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { touch } from './actions';
import css from './counter.module.css';

/** Where what is touched goes, and how much of it is there already. */
export type Onto = Readonly<{
  slipId: string;
  /** Changes with every change of the slip: the form begins anew with it. */
  stamp: string;
  taken: ReadonlyMap<string, number>;
}>;

type ResultsProps = Readonly<{
  label: string;
  pieces: readonly Piece[];
  onto: Onto;
  lengthUnit: LengthSystem;
}>;

/** Pieces to be touched: one touch puts one on the slip. */
export function Results({ label, pieces, onto, lengthUnit }: ResultsProps) {
  return (
    <FormFrame key={onto.stamp} action={touch} label={label}>
      <RequestKey />
      <input type="hidden" name="slipId" value={onto.slipId} />
      <ul className={css['results']} aria-label={label}>
        {pieces.map((piece) => (
          <li key={piece.id}>
            <Result piece={piece} taken={onto.taken.get(piece.id) ?? 0} lengthUnit={lengthUnit} />
          </li>
        ))}
      </ul>
    </FormFrame>
  );
}

type ResultProps = Readonly<{ piece: Piece; taken: number; lengthUnit: LengthSystem }>;

function Result({ piece, taken, lengthUnit }: ResultProps) {
  return (
    <button
      type="submit"
      name="put"
      value={`sku:${piece.id}`}
      disabled={piece.onHand <= taken}
      className={css['result']}
    >
      {piece.picture ? (
        <Picture {...piece.picture} alt="" size="thumb" />
      ) : (
        <span className={css['bare']} aria-hidden="true" />
      )}
      <span className={css['result-words']}>
        <span className={css['result-title']}>{piece.title}</span>
        <span className={css['quiet']}>
          {piece.what} · {formatSize(piece, lengthUnit)} · {piece.code}
        </span>
        {piece.grade === 'first' ? null : (
          <span className={css['flawed']}>{piece.grade}: sold for less, and said so</span>
        )}
      </span>
      <span className={css['result-price']}>
        <Money cents={piece.priceCents} size="strong" />
        <Here piece={piece} taken={taken} />
      </span>
    </button>
  );
}

function Here({ piece, taken }: Omit<ResultProps, 'lengthUnit'>) {
  const { onHand, held, elsewhere } = piece;
  const left = onHand - taken;
  if (left > 0 && held >= onHand) return <Mark mark="held" text={`${left} here, held`} />;
  if (left > 0) {
    const kept = held > 0 ? `, ${held} held` : '';
    return (
      <span className={css['quiet']}>
        {left} here{kept}
      </span>
    );
  }
  if (taken > 0) return <span className={css['quiet']}>all on the slip</span>;
  return (
    <Mark mark="sold" text={elsewhere > 0 ? `none here, ${elsewhere} elsewhere` : 'none here'} />
  );
}

/** A set that was found by its code: one touch puts all its pieces on the slip. */
export function SetResult({ set, onto }: Readonly<{ set: KeptSet; onto: Onto }>) {
  return (
    <FormFrame key={onto.stamp} action={touch} label="The set">
      <RequestKey />
      <input type="hidden" name="slipId" value={onto.slipId} />
      <ul className={css['results']} aria-label="Found">
        <li>
          <button type="submit" name="put" value={`set:${set.setId}`} className={css['name']}>
            <span className={css['result-words']}>
              <span className={css['result-title']}>{set.title}</span>
              <span className={css['quiet']}>
                a set:{' '}
                {set.members.map(({ title, quantity }) => `${quantity} × ${title}`).join(', ')}
              </span>
            </span>
            {set.priceCents === null ? null : <Money cents={set.priceCents} size="strong" />}
          </button>
        </li>
      </ul>
    </FormFrame>
  );
}
