import type { ComponentProps } from 'react';
import { Hung, PieceHanging } from '@/app/ui/piece/piece-hanging';
import type { Piece } from '@/lib/stock/reads';
import { formatSize, type LengthSystem } from '@/lib/units/rules';

type PieceHungProps = Readonly<{ piece: Piece; system: LengthSystem }> &
  Pick<ComponentProps<typeof PieceHanging>, 'mark' | 'markText'>;

/** A piece on a wall of the stock room, with its label; it leads to the piece's own page. */
export function PieceHung({ piece, system, ...mark }: PieceHungProps) {
  return (
    <Hung>
      <PieceHanging
        picture={piece.picture}
        title={piece.title}
        href={`/stock/${piece.code}`}
        what={piece.what}
        size={formatSize(piece, system)}
        code={piece.code}
        priceCents={piece.priceCents}
        count={piece.onHand}
        {...mark}
      />
    </Hung>
  );
}
