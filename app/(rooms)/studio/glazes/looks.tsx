import type { Lab } from '@/lib/colour/rules';
import type { KeptPicture } from '@/lib/glazes/reads/shown';
import { classes } from '@/app/ui/classes';
import { Picture } from '@/app/ui/piece/picture';
import css from './glazes.module.css';

type LooksProps = Readonly<{
  /** What it is a picture of, for those who do not see it. */
  name: string;
  raw: KeptPicture | null;
  fired: KeptPicture | null;
  large?: boolean | undefined;
}>;

/** A glaze as it looks raw, and fired: the one says little of the other. */
export function Looks({ name, raw, fired, large }: LooksProps) {
  return (
    <div className={classes(css['looks'], large && css['large'])}>
      <Look name={name} state="fired" picture={fired} />
      <Look name={name} state="raw" picture={raw} />
    </div>
  );
}

function Look({
  name,
  state,
  picture,
}: Readonly<{ name: string; state: 'raw' | 'fired'; picture: KeptPicture | null }>) {
  if (!picture) return <div className={css['bare']}>{state}: no picture yet</div>;
  const { fileId, widthPx, heightPx } = picture;
  return (
    <figure className={css['look']}>
      <Picture
        src={`/files/${fileId}`}
        alt={`${name}, ${state}`}
        width={widthPx}
        height={heightPx}
      />
      <figcaption>{state}</figcaption>
    </figure>
  );
}

/** A measured colour, drawn as a screen can and said in its three figures. */
export function Swatch({ lab }: Readonly<{ lab: Lab }>) {
  const [l, a, b] = lab;
  return (
    <span className={css['swatch']}>
      <svg viewBox="0 0 10 10" aria-hidden="true">
        <rect width="10" height="10" fill={`lab(${l}% ${a} ${b})`} />
      </svg>
      L* {l}, a* {a}, b* {b}
    </span>
  );
}
