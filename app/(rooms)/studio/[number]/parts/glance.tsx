import Link from 'next/link';
import type { PartMapShown } from '@/lib/studio/reads/parts/map';
import { safeWords } from '@/lib/studio/rules/parts/words';
import { drawnShapes } from './drawn-shapes';
import { MapDrawing } from './map-drawing';
import css from './parts.module.css';

type PartsGlanceProps = Readonly<{
  map: PartMapShown;
  /** Whether it leads to the map; for who may not see the studio it is a picture alone. */
  isLink?: boolean | undefined;
}>;

/** The piece map at a glance: how many parts are safe, and the drawing made small. */
export function PartsGlance({ map, isLink = true }: PartsGlanceProps) {
  const { size, safe, numbers } = map;
  const words =
    safe && safe.safe > 0
      ? `${safeWords(safe)}.`
      : `${numbers.length} parts, none through a fire yet.`;
  return (
    <div className={css['glance']}>
      <p>{words}</p>
      <MapDrawing
        isSmall
        shapes={drawnShapes(map)}
        aspect={size.heightUm / size.widthUm}
        label={`The numbered drawing: ${words}`}
      />
      {isLink ? (
        <p>
          <Link href={`/studio/${map.jobNumber}/parts`}>The parts by number</Link>
        </p>
      ) : null}
    </div>
  );
}
