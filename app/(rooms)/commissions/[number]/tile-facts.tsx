import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { Picture } from '@/app/ui/piece/picture';
import type { FiredTold, TileTold } from '@/lib/commissions/reads/colours/shown';
import { colourDifference } from '@/lib/colour/rules/words';
import { formatDay } from '@/lib/dates/rules';
import css from '../commissions.module.css';

/** What stands on the back of a tile, its range, its twin, and what was held against it. */
export function TileFacts({ tile }: Readonly<{ tile: TileTold }>) {
  const { areas, body, coats, cone, firing, batch, keptAt, given } = tile;
  return (
    <>
      <Facts
        facts={[
          { name: 'For', value: areas.length > 0 ? areas.join(', ') : null },
          { name: 'Clay body', value: body },
          { name: 'Coats', value: coats },
          { name: 'Cone', value: cone || null },
          { name: 'Firing', value: firing || null },
          { name: 'Bucket of glaze', value: batch, notKnown: 'none written down' },
          { name: 'The studio’s set', value: keptAt || null },
          {
            name: 'Its twin',
            value: given ? `${given.how}, ${formatDay(given.on, 'short')}` : null,
            notKnown: 'not given yet',
          },
        ]}
      />
      {tile.shades.length > 0 ? (
        <ul className={css['range']} aria-label="The range, from light to dark">
          {tile.shades.map(({ shade, picture, lab }) => (
            <li key={shade}>
              {picture ? <Picture {...picture} /> : null}
              <div>{shade}</div>
              <div className={css['quiet']}>
                {lab ? `L* ${lab[0]}, a* ${lab[1]}, b* ${lab[2]}` : 'not measured'}
              </div>
            </li>
          ))}
        </ul>
      ) : null}
      {tile.fired.map((fired) => (
        <Fired key={`${fired.where}-${fired.measuredOn}`} tile={tile} fired={fired} />
      ))}
    </>
  );
}

function Fired({ tile, fired }: Readonly<{ tile: TileTold; fired: FiredTold }>) {
  const against = tile.shades.find(({ shade }) => shade === fired.nearest)?.lab;
  const told = against ? colourDifference(against, fired.lab).words : '';
  const isOff = fired.deltaE > fired.limit;
  return (
    <Notice kind={isOff ? 'caution' : 'done'} title={fired.where}>
      {`ΔE00 ${Math.round(fired.deltaE * 10) / 10} to the ${fired.nearest} of the range: ${told}. `}
      {isOff
        ? `Beyond the limit of ${fired.limit}: fire it again, glaze it again, make it again, or ask them.`
        : `Within the limit of ${fired.limit}.`}
    </Notice>
  );
}
