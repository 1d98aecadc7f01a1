import type { ComponentProps } from 'react';
import { Picture } from '@/app/ui/piece/picture';
import type { PictureShown } from './picture-shown';
import css from './spots.module.css';

type SpotShown = Readonly<{ xPermille: number; yPermille: number; words: string }>;

type NumberedPictureProps = Readonly<{
  picture: PictureShown;
  spots: readonly SpotShown[];
  size?: ComponentProps<typeof Picture>['size'];
}>;

/** A picture with numbered spots in it; what each says stands beside it by its number. */
export function NumberedPicture({ picture, spots, size }: NumberedPictureProps) {
  return (
    <div className={css['ground']}>
      <Picture {...picture} size={size} />
      {spots.map((spot, at) => (
        <span
          key={`${spot.xPermille}-${spot.yPermille}-${spot.words}`}
          className={css['spot']}
          style={{ left: `${spot.xPermille / 10}%`, top: `${spot.yPermille / 10}%` }}
          aria-hidden="true"
        >
          {at + 1}
        </span>
      ))}
    </div>
  );
}

type SpotPictureProps = Readonly<{
  picture: PictureShown;
  spots: readonly SpotShown[];
  /** Names the list of what stands at the spots. */
  label: string;
}>;

/** A picture with numbered spots in it, and what each says in a list beneath. */
export function SpotPicture({ picture, spots, label }: SpotPictureProps) {
  return (
    <figure className={css['figure']}>
      <NumberedPicture picture={picture} spots={spots} />
      {spots.length > 0 ? (
        <figcaption>
          <ol aria-label={label} className={css['list']}>
            {spots.map((spot) => (
              <li key={`${spot.xPermille}-${spot.yPermille}-${spot.words}`}>{spot.words}</li>
            ))}
          </ol>
        </figcaption>
      ) : null}
    </figure>
  );
}
