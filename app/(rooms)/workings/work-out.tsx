import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import { Caution } from '@/app/ui/page/caution';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { Section, Slab } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import type { Answer, NamedWorking } from '@/lib/workings/working';
import { figureText, inputFrom, labelOf, questionsOf } from './by-hand';
import css from './workings.module.css';

type WorkOutProps = Readonly<{ working: NamedWorking; typed: Readonly<Record<string, string>> }>;

/** One calculation: its questions, and the answer to what was typed. */
export function WorkOut({ working, typed }: WorkOutProps) {
  const questions = questionsOf(working.example);
  const isAsked = questions.some((question) => typed[question.key] !== undefined);
  return (
    <Section title={working.title} lead={working.formula}>
      <Slab>
        <form method="get" action="/workings" className={css['form']} aria-label={working.title}>
          <input type="hidden" name="name" value={working.name} />
          {questions.map((question) => (
            <Field
              key={`${working.name} ${question.key}`}
              name={question.key}
              label={question.label}
              hint={question.hint}
              kind={question.isLong ? 'textarea' : 'text'}
              rows={3}
              width={question.isLong ? 'full' : 'half'}
              defaultValue={isAsked ? (typed[question.key] ?? '') : question.example}
              autoComplete="off"
            />
          ))}
          <div>
            <Button type="submit">Work it out</Button>
          </div>
        </form>
      </Slab>
      {isAsked ? <Worked working={working} typed={typed} /> : <Source working={working} />}
    </Section>
  );
}

function Source({ working }: Readonly<{ working: NamedWorking }>) {
  return (
    <>
      <p className={css['source']}>From: {working.source}</p>
      {working.caution === null ? null : <Caution>{working.caution}</Caution>}
    </>
  );
}

function Worked({ working, typed }: WorkOutProps) {
  const answered = working.answer(inputFrom(working.example, typed));
  if (!answered.ok) return <Notice kind="refused">{sentenceOf(answered.refusal)}</Notice>;
  const { working: steps, source, caution } = answered.value;
  return (
    <>
      <Facts facts={factsOf(answered.value)} />
      <Working steps={steps} formula={working.formula} source={source} caution={caution} open />
    </>
  );
}

/** A fault line in words: "fired, in mm: must be more than 0." */
function sentenceOf(fault: string): string {
  const said = fault.replace(/^(\w+):/, (_whole, key: string) => `${labelOf(key)}:`);
  return `${said}.`;
}

function factsOf(answer: Answer) {
  return Object.entries(answer)
    .filter(([key]) => !['working', 'source', 'caution'].includes(key))
    .map(([key, figure]) => ({ name: labelOf(key), value: figureText(figure) }));
}
