'use client';

import { createContext, useContext } from 'react';
import type { FormAction, FormState } from '@/app/ui/form-state';
import { freshKey } from '@/app/ui/form/fresh-key';
import { workEntryInput, type WorkEntrySent } from '@/lib/installation/input/work/entry';
import type { WorkOrder } from '@/lib/installation/reads/work/order';
import type { DayHere, DayKnown } from '@/lib/installation/rules/work/on-device';
import { now } from '@/lib/platform/clock';
import type { LengthSystem } from '@/lib/units/rules';
import type { Outbox, OutboxView } from './kept/outbox';
import type { KeptPicture } from './kept/store';

/** What the device has to know of a work order, so that it can be ticked off without a line. */
export type DayShown = Omit<DayKnown, 'ticks'> &
  Readonly<
    Pick<
      WorkOrder,
      'id' | 'kind' | 'items' | 'plan' | 'handOverFacts' | 'maySign' | 'needsOwner' | 'staff'
    > & {
      ticks: WorkOrder['ticks'];
      snags: readonly { id: string; words: string; mendBy: string; mendByOn: string }[];
      me: { id: string; name: string };
      /** Whether whoever looks can say that it goes before it is paid. */
      givesWord: boolean;
      zone: string;
      system: LengthSystem;
      phone: string;
      isSigned: boolean;
      isCalledOff: boolean;
    }
  >;

type Today = Readonly<{ day: DayShown; here: DayHere; outbox: Outbox; view: OutboxView }>;

/** The work order around a part of the page; WorkDay provides it. */
export const WorkDayContext = createContext<Today | null>(null);

/** The work order around this part of the page. */
export function useWorkDay(): Today {
  const today = useContext(WorkDayContext);
  if (!today) throw new Error('A part of a work order stands in one.');
  return today;
}

type What = WorkEntrySent extends infer One
  ? One extends WorkEntrySent
    ? Omit<One, 'id' | 'appointmentId' | 'madeById' | 'at'>
    : never
  : never;

/** An entry of now, by whoever is signed in here; or the faults of what was typed, by field. */
export function entryOf(day: DayShown, what: What): WorkEntrySent | { faults: Faults } {
  const { id: appointmentId, me } = day;
  const mine = { id: freshKey(), appointmentId, madeById: me.id, at: now().toISOString() };
  const entry = { ...mine, ...what };
  const read = workEntryInput.safeParse(entry);
  if (read.success) return entry;
  const faults: Record<string, string> = {};
  for (const { path, message } of read.error.issues) faults[path.join('.')] ??= message;
  return { faults };
}

type Faults = Readonly<Record<string, string>>;

/** Keeps an entry here; what a form shows then. */
export async function keepHere(
  { day, outbox }: Pick<Today, 'day' | 'outbox'>,
  what: What,
  { said, picture = null }: { said: string; picture?: KeptPicture | null },
): Promise<FormState> {
  const entry = entryOf(day, what);
  if ('faults' in entry) {
    const message = 'Not yet: please look again at what is marked below.';
    return { kind: 'refused', message, fields: entry.faults, submitted: {} };
  }
  await outbox.keep(entry, picture);
  return { kind: 'done', message: said };
}

/** An action that runs on the device, and keeps what was typed when it refuses. */
export function onDevice(act: (form: FormData) => Promise<FormState>): FormAction {
  return async (_before, form) => {
    const state = await act(form);
    if (state.kind !== 'refused') return state;
    const submitted: Record<string, string> = {};
    for (const name of new Set(form.keys())) {
      const typed = form.getAll(name).filter((value) => typeof value === 'string');
      if (typed.length > 0) submitted[name] = typed.join(',');
    }
    return { ...state, submitted };
  };
}

/** A field of a form as text; empty where it is not there. */
export function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value.trim() : '';
}
