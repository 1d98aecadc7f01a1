import type { Metadata } from 'next';
import { Button, ButtonLink } from '@/app/ui/button/button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { Caution } from '@/app/ui/page/caution';
import { Empty } from '@/app/ui/page/empty';
import { Facts } from '@/app/ui/page/facts';
import { Notice } from '@/app/ui/page/notice';
import { InThisRoom } from '@/app/ui/page/in-this-room';
import { PageHead } from '@/app/ui/page/page-head';
import { Columns, Section, Slab } from '@/app/ui/page/section';
import { Working } from '@/app/ui/page/working';
import { requireActor } from '@/lib/access/reads';
import type { Template } from '@/lib/clay/rules/template';
import { listBodies, type ClayBodyKept } from '@/lib/commissions/reads/enquiry/bodies';
import { getGallery } from '@/lib/platform/settings';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { claySize } from '@/lib/workings/entries/studio/clay';
import { SheetsLying } from './sheets-lying';
import { readTemplateAddress, templatePdfHref, type TemplateAddress } from './template-address';
import css from './template.module.css';

export const metadata: Metadata = { title: 'Template' };

type TemplatePageProps = Readonly<{ searchParams: Promise<Record<string, string | string[]>> }>;

/** A paper template in wet size: how large, of which clay, and how its sheets will lie. */
export default async function TemplatePage({ searchParams }: TemplatePageProps) {
  const actor = await requireActor('studio.see');
  const [gallery, bodies] = await Promise.all([getGallery(), listBodies(actor)]);
  const address = readTemplateAddress(await searchParams, { ...gallery, bodies });
  const { lengthUnit } = gallery;
  return (
    <>
      <PageHead
        title="Template"
        back={{ href: '/studio', name: 'Studio' }}
        lead="The outline of a piece on paper, as large as the clay has to be while it is wet."
      />
      <InThisRoom room="studio" here="template" roles={actor.roles} />
      <Columns
        wide={
          <Slab>
            <TemplateForm address={address} bodies={bodies} lengthUnit={lengthUnit} />
          </Slab>
        }
        beside={<WhatComes address={address} lengthUnit={lengthUnit} />}
      />
    </>
  );
}

type TemplateFormProps = Readonly<{
  address: TemplateAddress;
  bodies: readonly ClayBodyKept[];
  lengthUnit: LengthSystem;
}>;

function TemplateForm({ address, bodies, lengthUnit }: TemplateFormProps) {
  const { typed, faults, paper } = address;
  const example = lengthUnit === 'in' ? 'Such as 10 1/2.' : 'Such as 267.';
  const measure = { kind: 'measure', unit: lengthUnit, required: true } as const;
  const parts = { kind: 'count', hint: '1 for a piece in one.' } as const;
  return (
    <form action="/studio/template" className={css['form']} aria-label="Template">
      <Field name="title" label="What it is" defaultValue={typed.title} maxLength={120} optional />
      <div className={css['pair']}>
        <Field
          name="width"
          label="Fired width"
          hint={example}
          defaultValue={typed.width}
          fault={faults.width}
          {...measure}
        />
        <Field
          name="height"
          label="Fired height"
          hint={example}
          defaultValue={typed.height}
          fault={faults.height}
          {...measure}
        />
      </div>
      <Field
        name="body"
        label="Clay body"
        kind="select"
        options={[
          { value: '', label: 'None of them: as written below' },
          ...bodies.map(bodyOption),
        ]}
        defaultValue={typed.body}
      />
      <Field
        name="shrinkage"
        label="What the clay shrinks"
        kind="percent"
        unit="%"
        hint="Of its wet length, wet to fired. What stands here goes before the clay body’s own."
        defaultValue={typed.shrinkage}
        fault={faults.shrinkage}
      />
      <div className={css['pair']}>
        <Field
          name="across"
          label="Parts across"
          defaultValue={typed.across || '1'}
          fault={faults.across}
          {...parts}
        />
        <Field
          name="down"
          label="Parts down"
          defaultValue={typed.down || '1'}
          fault={faults.down}
          {...parts}
        />
      </div>
      <Choice
        name="paper"
        legend="Paper"
        options={[
          { value: 'letter', label: 'Letter' },
          { value: 'a4', label: 'A4' },
        ]}
        defaultValue={paper}
        size="counter"
      />
      <Button type="submit" size="counter">
        Show the sheets
      </Button>
    </form>
  );
}

function bodyOption({ id, name, shrinkagePercent }: ClayBodyKept) {
  const shrinks = shrinkagePercent === null ? 'not measured' : `shrinks ${shrinkagePercent}%`;
  return { value: id, label: `${name}, ${shrinks}` };
}

type WhatComesProps = Readonly<{ address: TemplateAddress; lengthUnit: LengthSystem }>;

function WhatComes({ address, lengthUnit }: WhatComesProps) {
  const { template, refused } = address;
  if (refused !== null) return <Notice kind="refused">{refused}</Notice>;
  if (!template) {
    return (
      <Empty title="Nothing to cut after yet">
        Say how large the piece is to be when it is fired, and what the clay shrinks. The sheets are
        drawn here before they are printed.
      </Empty>
    );
  }
  const count = template.sheets.length;
  return (
    <Section title={count === 1 ? 'One sheet' : `${count} sheets`}>
      <div className={css['comes']}>
        <Facts
          facts={[
            { name: 'Wet, height × width', value: wetSize(template, lengthUnit) },
            { name: 'Fired, height × width', value: firedSize(template, lengthUnit) },
          ]}
        />
        <p>
          <ButtonLink href={templatePdfHref(address)} size="counter">
            Print the template
          </ButtonLink>
        </p>
        <SheetsLying template={template} />
        <Caution>
          Print it at its own size, never fitted to the page, and hold a ruler against the one on
          each sheet.
        </Caution>
        <HowItWasWorkedOut template={template} />
      </div>
    </Section>
  );
}

function wetSize({ wetWidthUm, wetHeightUm }: Template, unit: LengthSystem): string {
  return formatSize({ widthUm: wetWidthUm, heightUm: wetHeightUm }, unit);
}

function firedSize({ asked }: Template, unit: LengthSystem): string {
  return formatSize({ widthUm: asked.firedWidthUm, heightUm: asked.firedHeightUm }, unit);
}

function HowItWasWorkedOut({ template: { asked } }: Readonly<{ template: Template }>) {
  const { firedWidthUm, firedHeightUm, shrinkagePercent } = asked;
  const steps = [firedWidthUm, firedHeightUm].flatMap(
    (firedMm) => claySize.workOut({ firedMm, shrinkagePercent }).working,
  );
  const { formula, source, caution } = claySize;
  return <Working steps={[...new Set(steps)]} {...{ formula, source, caution }} />;
}
