import type { ContentKept } from '@/lib/sending/reads/stored';
import { namedTyped, weighedIn } from '@/lib/sending/rules/typed/line';
import { formatWeight, type LengthSystem } from '@/lib/units/rules';
import css from '../sending.module.css';

type LayersProps = Readonly<{ contents: readonly ContentKept[]; unit: LengthSystem }>;

/** What is in a box, layer by layer from the bottom up. */
export function Layers({ contents, unit }: LayersProps) {
  const layers = [...new Set(contents.map(({ layer }) => layer))].toSorted((a, b) => a - b);
  return (
    <ol className={css['layers']}>
      {layers.map((layer) => (
        <li key={layer}>
          {layers.length > 1 ? <span className={css['quiet']}>Layer {layer}</span> : null}
          {contents
            .filter((content) => content.layer === layer)
            .map((content) => (
              <div key={content.id}>
                {namedTyped(content)}
                {content.weightG === 0
                  ? null
                  : `, ${formatWeight(content.weightG * content.pieces, weighedIn(unit))}`}
              </div>
            ))}
        </li>
      ))}
    </ol>
  );
}
