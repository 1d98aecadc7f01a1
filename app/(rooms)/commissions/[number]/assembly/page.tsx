import { redirect } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { requireActor } from '@/lib/access/reads';
import type { Day } from '@/lib/dates/rules';
import { clockTime } from '@/lib/dates/rules/time-of-day';
import { listAssemblies } from '@/lib/installation/reads/assembly/assemblies';
import { settingCautions } from '@/lib/installation/rules/assembly/cure';
import { now } from '@/lib/platform/clock';
import type { Scale } from '@/lib/studio/rules/kilns/degrees';
import { ActPage, AboutCommission } from '../act-page';
import { AssembliesSet } from '../assembly-lines';
import { readSheet, type SheetParams } from '../read-sheet';
import { writeAssembly } from './actions';
import css from '../../commissions.module.css';

export const metadata = { title: 'Set on the board' };

/** The pieces are set on their board: with what, when, and until when nothing may stand. */
export default async function AssemblyPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('installation.do');
  const sheet = await readSheet(actor, params);
  if (sheet.handOver !== null || sheet.ending !== null) redirect(`/commissions/${sheet.number}`);
  const { timeZone: zone, lengthUnit } = sheet.gallery;
  const told = await listAssemblies(actor, sheet.id);
  const at = now();
  return (
    <ActPage
      sheet={sheet}
      title="Set on the board"
      lead="No hanging can be booked before it has cured. Pieces that are set again cure anew."
    >
      <div className={css['cautions']}>
        {settingCautions.map((caution) => (
          <Caution key={caution}>{caution}</Caution>
        ))}
      </div>
      <FormFrame action={writeAssembly} label="Set on the board">
        <RequestKey />
        <AboutCommission sheet={sheet} />
        <WhatFields last={told.assemblies[0]} />
        <WhenFields today={sheet.telling.today} at={clockTime(at, zone)} />
        <CureFields scale={lengthUnit === 'in' ? 'F' : 'C'} />
        <SubmitButton>Write it down</SubmitButton>
      </FormFrame>
      <AssembliesSet sheet={sheet} told={told} at={at} />
    </ActPage>
  );
}

type Last = Readonly<{ board: string; adhesive: string }> | undefined;

function WhatFields({ last }: Readonly<{ last: Last }>) {
  return (
    <>
      <Field
        name="board"
        label="What they are set on"
        hint="Board, its thickness, how edges and back are sealed."
        defaultValue={last?.board}
        maxLength={120}
        required
      />
      <Field
        name="adhesive"
        label="What they are set with"
        defaultValue={last?.adhesive}
        maxLength={120}
        required
      />
      <Field name="lot" label="Lot on its tin or tube" width="half" maxLength={60} optional />
    </>
  );
}

function WhenFields({ today, at }: Readonly<{ today: Day; at: string }>) {
  return (
    <>
      <Field
        name="finishedOn"
        label="The last piece was set on"
        kind="day"
        width="short"
        defaultValue={today}
        required
      />
      <Field name="finishedAt" label="At" kind="time" width="short" defaultValue={at} required />
    </>
  );
}

function CureFields({ scale }: Readonly<{ scale: Scale }>) {
  return (
    <>
      <input type="hidden" name="scale" value={scale} />
      <Field
        name="room"
        label="How warm the room is"
        hint="A colder room takes longer; below 50 °F (10 °C) many adhesives do not cure."
        unit={`°${scale}`}
        width="short"
        optional
      />
      <Field
        name="cure"
        label="How long it cures"
        hint="As the maker’s paper says for this temperature."
        kind="count"
        width="short"
        required
      />
      <Choice
        name="cureIn"
        legend="That is in"
        options={[
          { value: 'hours', label: 'hours' },
          { value: 'days', label: 'days' },
        ]}
        defaultValue="hours"
      />
      <Choice
        name="scrap"
        kind="tick"
        legend="A scrap"
        options={[
          {
            value: 'yes',
            label: 'A scrap of the same clay, board and adhesive was set beside it, and is kept',
            hint: 'Try it before anything is hung: it is the only proof there is.',
          },
        ]}
      />
      <Field
        name="note"
        label="What to know"
        hint="Damp air, where the screws are, which parts were pinned."
        kind="textarea"
        rows={2}
        maxLength={1000}
        optional
      />
    </>
  );
}
