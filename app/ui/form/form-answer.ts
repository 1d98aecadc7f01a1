'use client';

import { createContext, useContext } from 'react';
import { idle, type FormState } from '@/app/ui/form-state';

/** The state of the form around a field; {@link FormFrame} provides it. */
export const FormAnswer = createContext<FormState>(idle);

/** What the form around says of one field: its fault, and what was typed before. */
export function useFieldAnswer(name: string): { fault?: string; typed?: string } {
  const state = useContext(FormAnswer);
  if (state.kind !== 'refused') return {};
  const fault = state.fields[name];
  const typed = state.submitted[name];
  return { ...(fault ? { fault } : {}), ...(typed === undefined ? {} : { typed }) };
}
