import { SubmitButton } from '@/app/ui/button/submit-button';
import { FindForm } from '@/app/ui/form/find-form';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { Piece } from '@/lib/stock/reads';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { takeAction } from '../../actions';
import css from '../../fairs.module.css';

type FromStockProps = Readonly<{
  fair: { id: string; number: number };
  letters: string;
  found: readonly Piece[];
  counterId: string;
  lengthUnit: LengthSystem;
}>;

/** Three letters find pieces on the gallery floor; a touch takes one of them along. */
export function FromStock({ fair, letters, found, counterId, lengthUnit }: FromStockProps) {
  return (
    <Section title="Or from the gallery floor">
      <FindForm action={`/fairs/${fair.number}/take`} label="Find a piece" letters={letters} />
      {letters !== '' && found.length === 0 ? <p>Nothing looks like that.</p> : null}
      <ul className={css['found']}>
        {found.map((piece) => (
          <li key={piece.id}>
            <div>
              <cite>{piece.title}</cite>
              <span className={css['quiet']}>
                {formatSize(piece, lengthUnit)} · {piece.code} · {piece.onHand - piece.held} free
              </span>
            </div>
            {piece.onHand > piece.held ? (
              <FormFrame action={takeAction} label={`Take one of ${piece.title} along`}>
                <RequestKey />
                <input type="hidden" name="fairId" value={fair.id} />
                <input type="hidden" name="fromId" value={counterId} />
                <input type="hidden" name="pieces" value={piece.code} />
                <SubmitButton variant="quiet" size="counter">
                  Take one
                </SubmitButton>
              </FormFrame>
            ) : null}
          </li>
        ))}
      </ul>
    </Section>
  );
}
