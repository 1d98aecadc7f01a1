import { ButtonLink } from '@/app/ui/button/button';
import { Section } from '@/app/ui/page/section';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { Picture } from '@/app/ui/piece/picture';
import type { ShownTold } from '@/lib/commissions/reads/papers';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import { dayWord } from '@/lib/commissions/rules/course/sentences';
import { approvalWayWords } from '@/lib/commissions/rules/words';
import css from '../commissions.module.css';

type ShownWallProps = Readonly<{ sheet: Sheet; shown: readonly ShownTold[] }>;

/** The sketches and colour tiles as they were shown, and who said yes to which. */
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
        </span>
      }
    >
      {shown.length === 0 ? (
        <p className={css['quiet']}>
          Nothing was shown yet. Each sketch gets a letter, each colour tile a number, and a yes
          counts for exactly the picture it was given to.
        </p>
      ) : (
        <Wall label="Sketches and colour tiles">
          {shown.map((each) => (
            <Hung key={each.id}>
              <OneShown sheet={sheet} shown={each} />
            </Hung>
          ))}
        </Wall>
      )}
    </Section>
  );
}

function OneShown({ sheet, shown }: Readonly<{ sheet: Sheet; shown: ShownTold }>) {
  const { yes, label, what, words } = shown;
  const { today } = sheet.telling;
  const name = what === 'sketch' ? `Sketch ${label}` : `Colour tile ${label}`;
  return (
    <>
      <div className={css['shown-picture']}>
        <Picture {...shown.picture} size="hung" />
      </div>
      <div className={css['shown-label']}>
        <h3>{name}</h3>
        {words ? <p>{words}</p> : null}
        <p className={css['quiet']}>shown {dayWord(shown.shownOn, today)}</p>
        {yes ? (
          <p className={css['yes']}>
            <span aria-hidden="true">✓ </span>
            {yes.approvedBy} said yes {approvalWayWords[yes.how]} on{' '}
            {dayWord(yes.approvedOn, today)}. Written down by {yes.writtenBy}.
          </p>
        ) : null}
        {!yes && sheet.acts.has('yes') ? (
          <p>
            <ButtonLink href={`/commissions/${sheet.number}/yes/${shown.id}`} variant="quiet">
              {`Write down the yes to ${what === 'sketch' ? 'sketch' : 'tile'} ${label}`}
            </ButtonLink>
          </p>
        ) : null}
      </div>
    </>
  );
}
