import { Button, ButtonLink } from '@/app/ui/button/button';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { Section } from '@/app/ui/page/section';
import type { GlazeShown, RecipeShown } from '@/lib/glazes/reads/book';
import { foodShort } from '@/lib/glazes/rules/food';
import { hazardsOf } from '@/lib/glazes/rules/hazards';
import { cautionsFor } from '@/lib/studio/rules/kilns/cautions';
import css from '../glazes.module.css';

type RecipePartProps = Readonly<{ glaze: GlazeShown; mayKeep: boolean }>;

/** The recipe in percent, a bucket of it to weigh out, what to mind, and the versions before. */
export function RecipePart({ glaze, mayKeep }: RecipePartProps) {
  const [latest, ...before] = glaze.recipes;
  const act = mayKeep ? (
    <ButtonLink href={`/studio/glazes/${glaze.id}/recipe`} variant="quiet">
      {latest ? 'Write another version' : 'Write its recipe down'}
    </ButtonLink>
  ) : null;
  if (!latest) {
    return (
      <Section title="Recipe">
        <Empty title="No recipe is written down" act={act}>
          With its recipe here a bucket is weighed out for any weight, and a laboratory’s test can
          be tied to it.
        </Empty>
      </Section>
    );
  }
  return (
    <Section title={`Recipe ${latest.version}`} act={act} lead={latest.note || undefined}>
      <RecipeTable recipe={latest} />
      <Weigh glazeId={glaze.id} version={latest.version} />
      <Hazards materials={latest.materials.map(({ material }) => material)} />
      {before.length > 0 ? (
        <details>
          <summary>Versions before it</summary>
          {before.map((recipe) => (
            <Section
              key={recipe.id}
              title={`Recipe ${recipe.version}, ${foodShort(recipe.food)}`}
              lead={recipe.note || undefined}
            >
              <RecipeTable recipe={recipe} />
              <Weigh glazeId={glaze.id} version={recipe.version} />
            </Section>
          ))}
        </details>
      ) : null}
    </Section>
  );
}

/** The base in parts of a hundred, and what goes on top. */
function RecipeTable({ recipe }: Readonly<{ recipe: RecipeShown }>) {
  return (
    <Table
      caption={`Recipe ${recipe.version}`}
      captionHeardOnly
      columns={[{ name: 'Material' }, { name: 'Percent', figure: true }]}
      rows={recipe.materials.map(({ material, percent, isAddition }) => ({
        key: material,
        cells: [
          isAddition ? (
            <span key="on-top">
              {material} <span className={css['quiet']}>on top</span>
            </span>
          ) : (
            material
          ),
          isAddition ? `+ ${percent}` : percent,
        ],
      }))}
    />
  );
}

function Weigh({ glazeId, version }: Readonly<{ glazeId: string; version: number }>) {
  return (
    <form
      method="get"
      action={`/studio/glazes/${glazeId}/mix`}
      className={css['weigh']}
      aria-label={`Weigh out recipe ${version}`}
    >
      <input type="hidden" name="v" value={version} />
      <Field
        name="g"
        label="Dry weight of the bucket"
        kind="measure"
        unit="g"
        defaultValue="5000"
        width="short"
        size="counter"
      />
      <Button type="submit" size="counter">
        Weigh it out
      </Button>
    </form>
  );
}

/** What to mind by the names of the materials, and of anything that is mixed dry. */
export function Hazards({ materials }: Readonly<{ materials: readonly string[] }>) {
  const named = hazardsOf(materials);
  return (
    <>
      {named.map(({ key, words, materials: which }) => (
        <Caution key={key}>
          <strong>{which.join(', ')}.</strong> {words}
        </Caution>
      ))}
      {cautionsFor('mixing_dry').map(({ key, words }) => (
        <Caution key={key}>{words}</Caution>
      ))}
    </>
  );
}
