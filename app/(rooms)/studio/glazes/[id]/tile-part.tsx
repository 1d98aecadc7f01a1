import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { Empty } from '@/app/ui/page/empty';
import { Section } from '@/app/ui/page/section';
import { colourDifference } from '@/lib/colour/rules/words';
import { formatDay } from '@/lib/dates/rules';
import type { GlazeShown } from '@/lib/glazes/reads/book';
import type { TileShown } from '@/lib/glazes/reads/tiles';
import css from '../glazes.module.css';
import { Looks } from '../looks';

type TilePartProps = Readonly<{
  glaze: GlazeShown;
  tiles: readonly TileShown[];
  mayKeep: boolean;
}>;

/** The test tiles of a glaze, each held against the glaze's own colour. */
export function TilePart({ glaze, tiles, mayKeep }: TilePartProps) {
  const act = mayKeep ? (
    <ButtonLink href={`/studio/glazes/${glaze.id}/tile`} variant="quiet">
      Write a test tile down
    </ButtonLink>
  ) : null;
  return (
    <Section title="Test tiles" act={tiles.length > 0 ? act : null}>
      {tiles.length === 0 ? (
        <Empty title="No test tile yet" act={act}>
          A new bucket, another clay, another coat: each gets a tile with its number, and rides
          along in the next load.
        </Empty>
      ) : (
        <ul className={css['book']}>
          {tiles.map((tile) => (
            <li key={tile.id} className={css['glaze']}>
              <Looks name={`Test tile ${tile.number}`} raw={tile.raw} fired={tile.fired} />
              <div>
                <h3 className={css['name']}>
                  <Link href={`/studio/glazes/tiles/${tile.number}`}>Tile {tile.number}</Link>
                </h3>
                <p className={css['facts']}>{factsOf(tile)}</p>
                <p className={css['facts']}>{apartWords(tile)}</p>
                {tile.note === '' ? null : <p className={css['facts']}>{tile.note}</p>}
              </div>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function factsOf({ recipeVersion, body, cone, coats, firing, madeOn }: TileShown): string {
  const said = [
    recipeVersion === null ? null : `recipe ${recipeVersion}`,
    body,
    `cone ${cone}`,
    coats === 1 ? '1 coat' : `${coats} coats`,
    firing ? `firing ${firing.number}` : null,
    formatDay(madeOn, 'short'),
  ];
  return said.filter((each) => each !== null).join(' · ');
}

/** How far a tile is from the glaze's own colour, in words and its number. */
export function apartWords({ lab, glazeLab }: TileShown): string {
  if (!lab) return 'Not measured.';
  if (!glazeLab) return 'Measured; the glaze itself was not.';
  const { deltaE, words } = colourDifference(glazeLab, lab);
  const tenths = Math.round(deltaE * 10) / 10;
  return `Against the glaze’s own colour: ${words} (ΔE00 ${tenths}).`;
}
