import { DayText } from '@/app/ui/figures/day-text';
import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import type { PartTold } from '@/lib/studio/reads/parts/history';
import type { PartMapShown } from '@/lib/studio/reads/parts/map';
import { outside } from '@/lib/studio/rules';
import { partNow, type NumberNow, type PartNow } from '@/lib/studio/rules/parts/fates';
import { holdsUp } from '@/lib/studio/rules/parts/holding';
import { areaWords, partSize } from '@/lib/studio/rules/parts/sizes';
import { holdsUpWords, makeWords, placeWords } from '@/lib/studio/rules/parts/words';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { ChosenActs, type ActsShared } from './chosen-acts';
import { MakeHistory } from './make-history';
import css from './parts.module.css';

type PartPanelProps = Readonly<{
  map: PartMapShown;
  now: NumberNow;
  told: readonly PartTold[];
  shared: ActsShared;
  nextNames: readonly (string | null)[];
  lengthUnit: LengthSystem;
  mayMove: boolean;
}>;

/** One number: how large it is, what it holds up, and everything that was made for it. */
export function PartPanel(props: PartPanelProps) {
  const { map, now, told } = props;
  const held = holdsUp(map.steps, now, map.numbers);
  const isBehind = held !== null && held.waiting.length > 0;
  const makes = now.living.toSorted((one, other) => one.make - other.make);
  return (
    <Section title={`Part ${now.number}`} id="part">
      <div className={css['panel']}>
        <PartFacts {...props} />
        {held ? (
          <p>
            {isBehind ? (
              <strong>{holdsUpWords(now.number, held)}</strong>
            ) : (
              holdsUpWords(now.number, held)
            )}
          </p>
        ) : null}
        {now.best ? null : <p>Nothing of it is left, and none is begun anew.</p>}
        {[...makes, ...now.lost].map((part) => (
          <MakePanel
            key={part.id}
            part={part}
            {...props}
            history={told.find(({ id }) => id === part.id)}
          />
        ))}
      </div>
    </Section>
  );
}

function PartFacts({ map, now, lengthUnit }: PartPanelProps) {
  const shape = map.shapes.find(({ number }) => number === now.number);
  if (!shape) return null;
  const size = partSize(shape.outline, map.size, map.shrinkagePercent);
  return (
    <Facts
      facts={[
        {
          name: 'Fired, height × width',
          value: `${formatSize(size, lengthUnit)}, ${areaWords(size.areaMm2, lengthUnit)}`,
        },
        {
          name: 'Wet, height × width',
          value: size.wet && formatSize(size.wet, lengthUnit),
          notKnown: 'nobody has measured what the clay shrinks',
        },
        { name: 'Colour area', value: shape.area || null, notKnown: 'not said' },
        ...(shape.note ? [{ name: 'To mind', value: shape.note }] : []),
      ]}
    />
  );
}

type MakePanelProps = PartPanelProps & Readonly<{ part: PartNow; history: PartTold | undefined }>;

function MakePanel({ part, history, ...props }: MakePanelProps) {
  const { map, now, shared, nextNames, mayMove } = props;
  const { position, sinceOn, isInKiln } = partNow(part);
  const isLost = position === outside;
  const mayAct = mayMove && !isLost && !isInKiln;
  return (
    <article className={css['make']}>
      <h3>
        {makeWords(part)}: {placeWords(map.steps, position)}
      </h3>
      <p className={css['quiet']}>
        {sinceOn ? (
          <>
            since <DayText day={sinceOn} />
          </>
        ) : (
          'never moved yet'
        )}
        {isInKiln ? ', in a kiln that was lit' : ''}
      </p>
      {mayAct ? (
        <ChosenActs
          {...shared}
          partIds={[part.id]}
          named={
            now.living.length > 1 ? `part ${now.number}, ${makeWords(part)}` : `part ${now.number}`
          }
          nextName={nextNames[position] ?? null}
          isBegun={position > 0}
        />
      ) : null}
      {history ? <MakeHistory history={history} steps={map.steps} /> : null}
    </article>
  );
}
