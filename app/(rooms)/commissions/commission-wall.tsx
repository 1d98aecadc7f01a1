import { Hung, PieceHanging, Wall } from '@/app/ui/piece/piece-hanging';
import { formatDay } from '@/lib/dates/rules';
import type { CommissionInList } from '@/lib/commissions/reads';
import css from './commissions.module.css';

type CommissionWallProps = Readonly<{ commissions: readonly CommissionInList[]; label: string }>;

/** Commissions hung side by side, each with its picture, whom it is for and where it stands. */
export function CommissionWall({ commissions, label }: CommissionWallProps) {
  return (
    <Wall label={label}>
      {commissions.map(({ number, title, collector, sentence, waitsOn, promisedOn, picture }) => (
        <Hung key={number}>
          <PieceHanging
            picture={picture && { ...picture, alt: '' }}
            title={title}
            href={`/commissions/${number}`}
            what={`for ${collector}`}
            size={`commission ${number}${promisedOn ? ` · promised ${formatDay(promisedOn, 'short')}` : ''}`}
          >
            <p className={css['sentence']} data-waits-on={waitsOn}>
              {sentence}
            </p>
          </PieceHanging>
        </Hung>
      ))}
    </Wall>
  );
}
