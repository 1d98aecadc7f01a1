import { classes } from '@/app/ui/classes';
import css from './piece.module.css';

/** A picture as it is stored: where, what it shows in words, and its true size in pixels. */
export type PictureShown = Readonly<{ src: string; alt: string; width: number; height: number }>;

type PictureProps = PictureShown &
  Readonly<{
    /** `tall` fills its column; `hung` keeps within a common height; `thumb` is a finger's width. */
    size?: 'tall' | 'hung' | 'thumb' | undefined;
    /** Seen at once when the page opens: load it first. */
    first?: boolean | undefined;
  }>;

/** A picture in its own proportions; its place is kept before it has arrived. */
export function Picture({ src, alt, width, height, size = 'tall', first }: PictureProps) {
  return (
    <picture className={classes(css['picture'], css[size])}>
      <img
        src={src}
        alt={alt}
        width={width}
        height={height}
        loading={first ? 'eager' : 'lazy'}
        fetchPriority={first ? 'high' : 'auto'}
        decoding="async"
      />
    </picture>
  );
}
