import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Section } from '@/app/ui/page/section';
import type { FiringTold, LineOfLoad } from '@/lib/studio/reads/firings/firing';
import { lossCauses, lossCauseWords } from '@/lib/studio/rules';
import { outcomes } from '@/lib/studio/rules/firings/opening';
import { cautionsFor } from '@/lib/studio/rules/kilns/cautions';
import { degreesWords, type Scale } from '@/lib/studio/rules/kilns/degrees';
import { piecesWords } from '@/lib/studio/rules/words';
import { sendOpened } from '../actions';
import { coolSentence } from '../firing-words';
import css from '../firings.module.css';

type OpenItProps = Readonly<{ firing: FiringTold; scale: Scale; zone: string; mayMove: boolean }>;

/** What it reads before the lid is lifted, and how each piece came out: good, unless told. */
export function OpenIt({ firing, scale, zone, mayMove }: OpenItProps) {
  const { kiln, cool, lines } = firing;
  const limit = degreesWords(kiln.openBelowC, scale);
  if (!mayMove) return cool ? <p>{coolSentence(cool, zone)}</p> : null;
  return (
    <Section title="Open it" id="open" lead={`Only once it reads below ${limit}.`}>
      {[...cautionsFor('opening'), ...cautionsFor('unloading')].map(({ key, words }) => (
        <Caution key={key}>{words}</Caution>
      ))}
      <FormFrame action={sendOpened} label="Open it">
        <RequestKey />
        <input type="hidden" name="firingId" value={firing.id} />
        <input type="hidden" name="degrees" value={scale} />
        <div className={css['pair']}>
          <Field
            name="reading"
            label="It reads now"
            kind="count"
            size="counter"
            unit={`°${scale}`}
            required
          />
          <Field name="meterKwh" label="The meter says, in kWh" kind="count" size="counter" />
          <Field name="coneFell" label="How the cone fell" size="counter" optional />
        </div>
        <p className={css['quiet']}>
          All came out good, unless you say otherwise here. What was lost is begun anew where it is
          needed.
        </p>
        {lines.map((line) => (
          <fieldset key={line.id} className={css['line']}>
            <legend>
              Job {line.jobNumber}, <cite>{line.title}</cite>: {piecesWords(line.pieces)}
            </legend>
            {line.parts.length > 0 ? <PartFields line={line} /> : <CountFields line={line} />}
            <div className={css['pair']}>
              <Field
                name={`cause.${line.id}`}
                label="Why they were lost"
                kind="select"
                size="counter"
                options={[
                  { value: '', label: 'None was lost' },
                  ...lossCauses.map((cause) => ({ value: cause, label: lossCauseWords[cause] })),
                ]}
              />
              <Field name={`note.${line.id}`} label="What was seen" size="counter" optional />
            </div>
          </fieldset>
        ))}
        <SubmitButton size="counter" pendingText="Writing it down…">
          The kiln is open
        </SubmitButton>
      </FormFrame>
    </Section>
  );
}

function CountFields({ line }: Readonly<{ line: LineOfLoad }>) {
  return (
    <div className={css['pair']}>
      <Field
        name={`second.${line.id}`}
        label="Seconds"
        kind="count"
        size="counter"
        defaultValue="0"
      />
      <Field
        name={`again.${line.id}`}
        label="To fire again"
        kind="count"
        size="counter"
        defaultValue="0"
      />
      <Field name={`lost.${line.id}`} label="Lost" kind="count" size="counter" defaultValue="0" />
    </div>
  );
}

const outcomeNames = { good: 'good', second: 'a second', fire_again: 'fire again', lost: 'lost' };

function PartFields({ line }: Readonly<{ line: LineOfLoad }>) {
  return (
    <div className={css['parts']}>
      {line.parts.map((part) => (
        <Field
          key={part.partId}
          name={`part.${line.id}.${part.partId}`}
          label={part.make > 1 ? `Part ${part.number}, make ${part.make}` : `Part ${part.number}`}
          kind="select"
          size="counter"
          options={outcomes.map((outcome) => ({ value: outcome, label: outcomeNames[outcome] }))}
          defaultValue="good"
        />
      ))}
    </div>
  );
}
