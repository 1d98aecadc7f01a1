import Link from 'next/link';
import { Section } from '@/app/ui/page/section';
import { Hung, PieceHanging, Wall } from '@/app/ui/piece/piece-hanging';
import type { SoldOut } from '@/lib/studio/reads/make-next';
import css from './today.module.css';

type NoneLeftProps = Readonly<{ pieces: readonly SoldOut[]; mayMake: boolean }>;

/** Open stock that sold in the last thirty days, and of which none is left at the gallery. */
export function NoneLeft({ pieces, mayMake }: NoneLeftProps) {
  if (pieces.length === 0) return null;
  return (
    <Section title="None left" lead="Sold in the last thirty days, and none at the gallery now.">
      <Wall spacing="close" label="Pieces with none left">
        {pieces.map((piece) => (
          <Hung key={piece.skuId}>
            <PieceHanging
              title={piece.title}
              href={`/stock/${piece.code}`}
              what={piece.what}
              code={piece.code}
              picture={pictureOf(piece)}
            >
              <p className={css['sold']}>
                {piece.sold} sold,{' '}
                {piece.inMaking > 0 ? (
                  `${piece.inMaking} in the making`
                ) : mayMake ? (
                  <Link href={`/studio/new?piece=${piece.skuId}`}>make some</Link>
                ) : (
                  'none in the making'
                )}
              </p>
            </PieceHanging>
          </Hung>
        ))}
      </Wall>
    </Section>
  );
}

function pictureOf({ picture, title }: SoldOut) {
  if (!picture) return null;
  const { fileId, widthPx, heightPx } = picture;
  return { src: `/files/${fileId}`, alt: title, width: widthPx, height: heightPx };
}
