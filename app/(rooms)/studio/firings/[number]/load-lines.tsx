import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { FiringTold, LineOfLoad } from '@/lib/studio/reads/firings/firing';
import type { AtKiln } from '@/lib/studio/reads/firings/waiting';
import type { PieceLying } from '@/lib/studio/rules/firings/lying';
import { piecesWords } from '@/lib/studio/rules/words';
import { formatLength } from '@/lib/units/rules';
import { sendLine, sendLineOut } from '../actions';
import css from '../firings.module.css';

type LoadLinesProps = Readonly<{
  firing: FiringTold;
  toLayIn: readonly AtKiln[];
  lengthUnit: 'in' | 'mm';
}>;

/** What lies in a load, to be changed or taken out, and what could still be laid in. */
export function LoadLines({ firing, toLayIn, lengthUnit }: LoadLinesProps) {
  const isIn = (at: AtKiln) =>
    firing.lines.some((line) => line.jobId === at.jobId && line.position === at.position);
  const others = toLayIn.filter((at) => at.pieces > 0 && !isIn(at));
  return (
    <div className={css['lines']}>
      {firing.lines.map((line) => {
        const at = toLayIn.find(
          (one) => one.jobId === line.jobId && one.position === line.position,
        );
        return <LineIn key={line.id} firing={firing} line={line} at={at} lengthUnit={lengthUnit} />;
      })}
      {others.map((at) => (
        <section
          key={`${at.jobId} ${at.position}`}
          className={css['line']}
          aria-label={`Job ${at.jobNumber}, not in the load`}
        >
          <h3>
            Job {at.jobNumber}, <cite>{at.title}</cite>: {piecesWords(at.pieces)} not in it
          </h3>
          <details open={at.lying === null}>
            <summary>Lay some in</summary>
            <LineForm
              {...{ firing, at, lengthUnit }}
              pieces={at.pieces}
              lying={at.lying}
              chosen={at.freeParts.map(({ partId }) => partId)}
            />
          </details>
        </section>
      ))}
    </div>
  );
}

type LineInProps = Readonly<{
  firing: FiringTold;
  line: LineOfLoad;
  at: AtKiln | undefined;
  lengthUnit: 'in' | 'mm';
}>;

function LineIn({ firing, line, at, lengthUnit }: LineInProps) {
  return (
    <section className={css['line']} aria-label={`Job ${line.jobNumber}, in the load`}>
      <h3>
        Job {line.jobNumber}, <cite>{line.title}</cite>: {piecesWords(line.pieces)}
        {line.isAgain ? ', fired again' : ''}
      </h3>
      <div className={css['acts']}>
        {at ? (
          <details>
            <summary>Change it</summary>
            <LineForm
              {...{ firing, at, lengthUnit }}
              pieces={line.pieces}
              lying={line}
              chosen={line.parts.map(({ partId }) => partId)}
            />
          </details>
        ) : (
          <p>Its pieces are no longer at the kiln. Take it out.</p>
        )}
        <FormFrame action={sendLineOut} label={`Take job ${line.jobNumber} out`}>
          <RequestKey />
          <input type="hidden" name="lineId" value={line.id} />
          <SubmitButton variant="quiet" size="counter">
            Take out
          </SubmitButton>
        </FormFrame>
      </div>
    </section>
  );
}

type LineFormProps = Readonly<{
  firing: FiringTold;
  at: AtKiln;
  lengthUnit: 'in' | 'mm';
  pieces: number;
  lying: PieceLying | null;
  chosen: readonly string[];
}>;

function LineForm({ firing, at, lengthUnit, pieces, lying, chosen }: LineFormProps) {
  const length = (um: number | undefined) => (um ? formatLength(um, lengthUnit) : undefined);
  return (
    <FormFrame action={sendLine} label={`Job ${at.jobNumber} in this load`}>
      <RequestKey />
      <input type="hidden" name="firingId" value={firing.id} />
      <input type="hidden" name="jobId" value={at.jobId} />
      <input type="hidden" name="position" value={String(at.position)} />
      <input type="hidden" name="lengthUnit" value={lengthUnit} />
      {at.hasParts ? (
        <Choice
          name="partIds"
          legend="Which parts go in"
          kind="tick"
          size="counter"
          options={at.freeParts.map(({ partId, number, make }) => ({
            value: partId,
            label: make > 1 ? `${number}, make ${make}` : String(number),
          }))}
          defaultValue={chosen.join(',')}
        />
      ) : null}
      <div className={css['pair']}>
        {at.hasParts ? null : (
          <Field
            name="pieces"
            label={`How many of ${at.pieces}`}
            kind="count"
            size="counter"
            defaultValue={String(pieces)}
            required
          />
        )}
        {at.hasParts ? null : (
          <>
            <Field
              name="width"
              label="Width as it lies"
              size="counter"
              kind="measure"
              defaultValue={length(lying?.widthUm)}
            />
            <Field
              name="depth"
              label="Depth as it lies"
              size="counter"
              kind="measure"
              defaultValue={length(lying?.depthUm)}
            />
          </>
        )}
        <Field
          name="height"
          label="Height as it lies"
          size="counter"
          kind="measure"
          defaultValue={length(lying?.heightUm)}
        />
      </div>
      <SubmitButton size="counter">Lay it so</SubmitButton>
    </FormFrame>
  );
}
