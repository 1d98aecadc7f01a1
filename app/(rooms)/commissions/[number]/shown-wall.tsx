import { ButtonLink } from '@/app/ui/button/button';
import { Section } from '@/app/ui/page/section';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { NumberedPicture } from '@/app/ui/spots/spot-picture';
import { areasOf } from '@/lib/commissions/reads/colours/areas';
import type { ChangesTold, ShownWhole } from '@/lib/commissions/reads/colours/shown';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { placeWords } from '@/lib/commissions/rules/colours/places';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { approvalWayWords } from '@/lib/commissions/rules/words';
import css from '../commissions.module.css';

type ShownWallProps = Readonly<{ sheet: Sheet; shown: readonly ShownWhole[] }>;

/** The sketches and colour tiles as they were shown, the newest first, and what was said to each. */
export function ShownWall({ sheet, shown }: ShownWallProps) {
  const { number, acts } = sheet;
  return (
    <Section
      title="Sketches and colours"
      id="shown"
      act={
        <span className={css['acts']}>
          {acts.has('sketch') ? (
            <ButtonLink href={`/commissions/${number}/sketch`} variant="quiet">
              Show a sketch
            </ButtonLink>
          ) : null}
          {acts.has('colours') ? (
            <ButtonLink href={`/commissions/${number}/colours`} variant="quiet">
              Show a colour tile
            </ButtonLink>
          ) : null}
          {shown.length > 0 ? (
            <ButtonLink href={`/commissions/${number}/colours/pdf`} variant="quiet">
              The colour sheet
            </ButtonLink>
          ) : null}
        </span>
      }
    >
      {shown.length === 0 ? (
        <p className={css['quiet']}>
          Nothing was shown yet. Each sketch gets a letter, each colour tile a number, and a yes
          counts for exactly the picture it was given to.
        </p>
      ) : (
        <>
          <Areas shown={shown} />
          <Wall label="Sketches and colour tiles">
            {shown.toReversed().map((each) => (
              <Hung key={each.id}>
                <OneShown sheet={sheet} shown={each} />
              </Hung>
            ))}
          </Wall>
        </>
      )}
    </Section>
  );
}

/** Each colour area with its tiles, dark to light, and what is still missing. */
function Areas({ shown }: Readonly<{ shown: readonly ShownWhole[] }>) {
  const areas = areasOf(shown);
  if (areas.length === 0) return null;
  return (
    <ul aria-label="Colour areas">
      {areas.map(({ name, tiles, isApproved }) => (
        <li key={name}>
          {name}:{' '}
          {tiles.length === 0
            ? 'no tile yet'
            : `tile ${tiles.map(({ label }) => label).join(', ')}${tiles.length > 1 ? ', from dark to light' : ''}`}
          {isApproved ? ' ✓ approved' : tiles.length > 0 ? ', waits for a yes' : ''}
        </li>
      ))}
    </ul>
  );
}

type OneShownProps = Readonly<{ sheet: Sheet; shown: ShownWhole }>;

function OneShown({ sheet, shown }: OneShownProps) {
  const { label, what, sketch, tile } = shown;
  const { today } = sheet.telling;
  const name = what === 'sketch' ? `Sketch ${label}` : `Colour tile ${label}`;
  return (
    <>
      <div className={css['shown-picture']}>
        <NumberedPicture
          picture={shown.picture}
          spots={shown.changes.flatMap(({ spots }) => spots)}
          size="hung"
        />
      </div>
      <div className={css['shown-label']}>
        <h3>{name}</h3>
        <p>{sketch ? sketch.note : tileWords(tile)}</p>
        <p className={css['quiet']}>shown {dayWord(shown.shownOn, today)}</p>
        {shown.changes.map((changes, at) => (
          <Changes
            key={`${changes.askedBy}-${changes.words}`}
            changes={changes}
            today={today}
            firstSpot={1 + spotsBefore(shown.changes, at)}
          />
        ))}
        <Answer sheet={sheet} shown={shown} />
      </div>
    </>
  );
}

function tileWords(tile: ShownWhole['tile']): string {
  if (!tile) return '';
  const facts = [
    tile.glazes,
    tile.coats === null ? '' : `${tile.coats} coats`,
    tile.cone === '' ? '' : `cone ${tile.cone}`,
    tile.areas.length === 0 ? '' : `for ${tile.areas.join(', ')}`,
    tile.given ? 'twin given' : 'twin not given yet',
  ];
  return facts.filter(Boolean).join(' · ');
}

function spotsBefore(changes: readonly ChangesTold[], at: number): number {
  return changes.slice(0, at).reduce((sum, { spots }) => sum + spots.length, 0);
}

type ChangesProps = Readonly<{
  changes: ChangesTold;
  today: Sheet['telling']['today'];
  /** The number in the picture that its first spot has. */
  firstSpot: number;
}>;

function Changes({ changes, today, firstSpot }: ChangesProps) {
  const { askedBy, askedOn, how, words, spots, round } = changes;
  return (
    <div className={css['said']}>
      <p>
        {askedBy} asked for changes {approvalWayWords[how]} on {dayWord(askedOn, today)}
        {round === null ? '' : `, round ${round}`}
        {words === '' ? '.' : `: “${words}”`}
      </p>
      {spots.length > 0 ? (
        <ol start={firstSpot}>
          {spots.map((spot) => (
            <li key={spot.words}>
              {placeWords(spot)}: {spot.words}
            </li>
          ))}
        </ol>
      ) : null}
    </div>
  );
}

function Answer({ sheet, shown }: OneShownProps) {
  const { yes, label, what, id } = shown;
  const { acts, number, telling } = sheet;
  const name = what === 'sketch' ? 'sketch' : 'tile';
  return (
    <>
      {yes ? (
        <p className={css['yes']}>
          <span aria-hidden="true">✓ </span>
          {yes.approvedBy} said yes {approvalWayWords[yes.how]} on{' '}
          {dayWord(yes.approvedOn, telling.today)}
          {yes.isSigned ? ', signed' : ''}. <small>{shown.contentSha256.slice(0, 8)}</small>
        </p>
      ) : null}
      <p className={css['acts']}>
        {!yes && acts.has('yes') ? (
          <ButtonLink href={`/commissions/${number}/yes/${id}`} variant="quiet">
            {`Write down the yes to ${name} ${label}`}
          </ButtonLink>
        ) : null}
        {!yes && acts.has('changes') ? (
          <ButtonLink href={`/commissions/${number}/changes/${id}`} variant="quiet">
            {`Changes to ${name} ${label}`}
          </ButtonLink>
        ) : null}
        {what === 'colour_tile' ? (
          <ButtonLink href={`/commissions/${number}/tile/${id}`} variant="quiet">
            {`All of tile ${label}`}
          </ButtonLink>
        ) : null}
      </p>
    </>
  );
}
