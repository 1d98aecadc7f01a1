import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Button } from '@/app/ui/button/button';
import { Table } from '@/app/ui/figures/table';
import { Field } from '@/app/ui/form/field';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { dryWeightInput } from '@/lib/glazes/input';
import { batchRefusalMessage, batchWeights, type WeighedBatch } from '@/lib/glazes/rules/batch';
import { formatDay } from '@/lib/dates/rules';
import css from '../../glazes.module.css';
import { readGlaze, type GlazeParams } from '../../read-glaze';
import { Hazards } from '../recipe-part';

export const metadata: Metadata = { title: 'Weigh a bucket out' };

type MixPageProps = Readonly<{
  params: GlazeParams;
  searchParams: Promise<{ g?: string | string[]; v?: string | string[] }>;
}>;

/** A bucket to weigh out, material by material: a sheet for the wall over the scale. */
export default async function MixPage({ params, searchParams }: MixPageProps) {
  const actor = await requireActor('studio.see');
  const { glaze, today } = await readGlaze(actor, params);
  const { g, v } = await searchParams;
  const recipe = glaze.recipes.find(({ version }) => `${version}` === v) ?? glaze.recipes[0];
  if (!recipe) notFound();
  const typed = typeof g === 'string' ? g : '5000';
  const read = dryWeightInput.safeParse(typed);
  const batch = batchWeights(recipe.materials, read.success ? read.data : Number.NaN);
  return (
    <>
      <PageHead
        title={`${glaze.name}, recipe ${recipe.version}`}
        back={{ href: `/studio/glazes/${glaze.id}`, name: glaze.name }}
        lead={`Cone ${glaze.cone}. ${glaze.food.use === 'proven' && recipe.food.use === 'proven' ? 'Tested for food' : 'Not for food'}. ${formatDay(today, 'short')}.`}
      />
      <InThisRoom room="studio" here="glazes" roles={actor.roles} />
      <form method="get" className={`${css['weigh']} not-on-paper`} aria-label="Another weight">
        <input type="hidden" name="v" value={recipe.version} />
        <Field
          name="g"
          label="Dry weight of the bucket"
          kind="measure"
          unit="g"
          defaultValue={typed}
          fault={batch.ok ? undefined : batchRefusalMessage(batch.refusal)}
          width="short"
          size="counter"
        />
        <Button type="submit" size="counter">
          Weigh it out
        </Button>
      </form>
      {batch.ok ? <ToWeigh batch={batch.value} /> : null}
      <Hazards materials={recipe.materials.map(({ material }) => material)} />
    </>
  );
}

function ToWeigh({ batch }: Readonly<{ batch: WeighedBatch }>) {
  return (
    <Section
      title={`${batch.dryG} g dry`}
      lead={`Weighed to ${batch.stepG} g, everything in the bucket before the water. The right column is what the scale says when it is not set back.`}
    >
      {batch.tooLittle.length > 0 ? (
        <Notice kind="caution">
          {batch.tooLittle.join(', ')}: too little for the scale. Mix a larger bucket, or weigh it
          on a finer one.
        </Notice>
      ) : null}
      <Table
        caption="To weigh out"
        captionHeardOnly
        columns={[
          { name: 'Material' },
          { name: 'Grams', figure: true },
          { name: 'All together', figure: true },
          { name: 'In' },
        ]}
        rows={batch.materials.map(({ material, grams, sumG, isAddition }) => ({
          key: material,
          cells: [
            isAddition ? `${material}, on top` : material,
            grams,
            sumG,
            <span key="tick" className={css['tick']} aria-hidden="true" />,
          ],
        }))}
        foot={['Together', `${batch.dryG}`, '', '']}
      />
      <p>
        Into the water, never the water into it; left to soak, then through a sieve. Write the
        number of the bucket, the recipe and the day on its lid, and make a test tile of it.
      </p>
    </Section>
  );
}
