import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Table } from '@/app/ui/figures/table';
import { Empty } from '@/app/ui/page/empty';
import { Section } from '@/app/ui/page/section';
import type { GlazeShown } from '@/lib/glazes/reads/book';
import { limitWords, wareKinds, wareWords } from '@/lib/glazes/rules/food';
import css from '../glazes.module.css';

type TestPartProps = Readonly<{ glaze: GlazeShown; mayKeep: boolean }>;

/** What laboratories found of lead and cadmium, recipe by recipe. */
export function TestPart({ glaze, mayKeep }: TestPartProps) {
  const tests = glaze.recipes.flatMap(({ version, proofs }) =>
    proofs.map((proof) => ({ ...proof, version })),
  );
  const act =
    mayKeep && glaze.recipes.length > 0 ? (
      <ButtonLink href={`/studio/glazes/${glaze.id}/proof`} variant="quiet">
        Write a leach test down
      </ButtonLink>
    ) : null;
  return (
    <Section
      title="For food"
      act={tests.length > 0 ? act : null}
      lead="What a laboratory found of lead and cadmium. A test speaks for the recipe that was tested, and for no other."
    >
      {tests.length === 0 ? (
        <Empty title="Not tested" act={act}>
          A laboratory fills six pieces with acid for a day and measures what came out. Until then
          it is not for food.
        </Empty>
      ) : (
        <Table
          caption="Leach tests"
          captionHeardOnly
          columns={[
            { name: 'Tested' },
            { name: 'Recipe', figure: true },
            { name: 'On' },
            { name: 'Most lead, mg/L', figure: true },
            { name: 'Most cadmium, mg/L', figure: true },
            { name: 'So it is' },
            { name: 'Laboratory', wideOnly: true },
          ]}
          rows={tests.map((test) => ({
            key: test.id,
            cells: [
              <DayText key="day" day={test.testedOn} />,
              `${test.version}`,
              wareWords[test.ware],
              mostOf(test.readings.map(({ lead }) => lead)),
              mostOf(test.readings.map(({ cadmium }) => cadmium)),
              test.isWithin ? 'within the limits' : 'beyond the limits',
              <span key="by">
                {[test.laboratory, test.reportNumber].filter(Boolean).join(', ')}
                {test.picture ? (
                  <>
                    {' '}
                    <a href={`/files/${test.picture.fileId}`}>its report</a>
                  </>
                ) : null}
              </span>,
            ],
          }))}
        />
      )}
      <details>
        <summary>The limits</summary>
        <ul>
          {wareKinds.map((ware) => (
            <li key={ware}>{limitWords(ware)}</li>
          ))}
        </ul>
        <p className={css['quiet']}>
          FDA CPG 545.400 for cadmium and 545.450 for lead, tested by ASTM C738. Whoever advises the
          studio says what else the law of the place asks for.
        </p>
      </details>
    </Section>
  );
}

function mostOf(readings: readonly string[]): string {
  return readings.reduce((most, each) => (Number(each) > Number(most) ? each : most), '0');
}
