import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import type { FiringTold } from '@/lib/studio/reads/firings/firing';
import type { LoadToLight } from '@/lib/studio/rules/firings/lighting';
import { tooFreshWords } from '@/lib/studio/rules/firings/words';
import { cautionsFor } from '@/lib/studio/rules/kilns/cautions';
import { sendCalledOff, sendLit } from '../actions';
import css from '../firings.module.css';

type LightItProps = Readonly<{ firing: FiringTold; toLight: LoadToLight }>;

/** What to mind, the question whether it is dry, and the touch that lights the kiln. */
export function LightIt({ firing, toLight }: LightItProps) {
  const { tooFresh, burning } = toLight;
  return (
    <Section title="Light it" id="light">
      {[...cautionsFor('loading'), ...cautionsFor('firing')].map(({ key, words }) => (
        <Caution key={key}>{words}</Caution>
      ))}
      <Caution>
        Its wiring is a licensed electrician’s. Somebody is there at the end: a kiln that does not
        switch off melts what is in it, and more.
      </Caution>
      {burning ? (
        <Notice kind="caution">
          Firing {burning.number} is still in {firing.kiln.name}. Open it first.
        </Notice>
      ) : null}
      {tooFresh.length > 0 ? (
        <Notice kind="caution" title="Are they bone dry?">
          {tooFresh.map(tooFreshWords).join(' ')}
        </Notice>
      ) : null}
      <FormFrame action={sendLit} label="Light it">
        <RequestKey />
        <input type="hidden" name="firingId" value={firing.id} />
        {tooFresh.length > 0 ? (
          <Field
            name="saidOfDry"
            label="How you know that they are dry"
            hint="It is kept with the firing."
            maxLength={300}
            required
          />
        ) : null}
        <Field
          name="meterKwh"
          label="What the meter says now, in kWh"
          kind="count"
          width="short"
          hint="Read again at the opening, it tells what the firing took."
          optional
        />
        <SubmitButton size="counter">The kiln is lit</SubmitButton>
      </FormFrame>
      <div className={css['acts']}>
        <FormFrame action={sendCalledOff} label="Call it off">
          <RequestKey />
          <input type="hidden" name="firingId" value={firing.id} />
          <SubmitButton variant="danger">Call this firing off</SubmitButton>
        </FormFrame>
      </div>
    </Section>
  );
}
