'use client';

import { useCallback, useSyncExternalStore } from 'react';
import { z } from 'zod';
import { shapesInput } from '@/lib/studio/input/parts';
import type { Shape } from '@/lib/studio/rules/parts/outline';

/** A drawing on this device that was not saved yet, and the version it was drawn on. */
export type KeptHere = { version: number; shapes: readonly Shape[] };

const keptInput = z.object({ version: z.int().min(0), shapes: shapesInput });

/** Keeps a drawing on this device while it is drawn, and finds it there when the page is opened. */
export function useKeptHere(jobId: string) {
  const name = `numbered-drawing-${jobId}`;
  const text = useSyncExternalStore(
    nothingToWatch,
    () => fromDevice(name),
    () => null,
  );
  const keep = useCallback(
    (kept: KeptHere | null) => onDevice(name, kept && JSON.stringify(kept)),
    [name],
  );
  return { text, keep };
}

function nothingToWatch(): () => void {
  return () => undefined;
}

/** A drawing that was kept on the device, from its text; null when it is none. */
export function readKept(text: string | null): KeptHere | null {
  if (text === null) return null;
  try {
    const read = keptInput.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** A device may refuse to keep anything; then the drawing stands on the page alone. */
function fromDevice(name: string): string | null {
  try {
    return window.localStorage.getItem(name);
  } catch {
    return null;
  }
}

function onDevice(name: string, text: string | null): void {
  try {
    if (text === null) window.localStorage.removeItem(name);
    else window.localStorage.setItem(name, text);
  } catch {
    // Nothing is lost: it is still on the page.
  }
}
