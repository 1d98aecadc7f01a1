import { Hung, PieceHanging, Wall } from '@/app/ui/piece/piece-hanging';
import { formatDay } from '@/lib/dates/rules';
import type { CommissionInList } from '@/lib/commissions/reads';
import css from './commissions.module.css';

type CommissionWallProps = Readonly<{ commissions: readonly CommissionInList[]; label: string }>;

/** Commissions hung side by side, each with its picture, whom it is for and where it stands. */
export function CommissionWall({ commissions, label }: CommissionWallProps) {
  return (
    <Wall label={label}>
      {commissions.map((each) => (
        <Hung key={each.number}>
          <OneHung commission={each} />
        </Hung>
      ))}
    </Wall>
  );
}

function OneHung({ commission }: Readonly<{ commission: CommissionInList }>) {
  const { number, title, collector, promisedOn, picture, waitsOn, sentence, waits } = commission;
  return (
    <PieceHanging
      picture={picture && { ...picture, alt: '' }}
      title={title}
      href={`/commissions/${number}`}
      what={`for ${collector}`}
      size={`commission ${number}${promisedOn ? ` · promised ${formatDay(promisedOn, 'short')}` : ''}`}
    >
      {commission.over.map((words) => (
        <p key={words} className={css['over']}>
          {words}.
        </p>
      ))}
      <p className={css['sentence']} data-waits-on={waitsOn}>
        {sentence}
      </p>
      {waits ? <p className={css['waits']}>{waits}.</p> : null}
    </PieceHanging>
  );
}
