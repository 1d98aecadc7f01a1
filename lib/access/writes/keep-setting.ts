import 'server-only';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import type { Result } from '@/lib/platform/result';
import { allow, type Doer } from '../rules';
import type { SettingsRefusal } from '../rules/set-up';

/** A change of how the gallery works: its name, the form's key, and what was asked. */
export type Setting = { name: string; requestKey: string; asked: Record<string, unknown> };

/** What a change answers: a word that the page says back, or why it was not made. */
export type SettingKept = Promise<Result<string, SettingsRefusal>>;

/**
 * Runs a change of how the gallery works, once for its key; for the owner alone.
 *
 * @returns refuses `not_allowed`, then a key used for something else, then what the work refuses
 */
export async function keepSetting(
  doer: Doer,
  { name, requestKey: key, asked }: Setting,
  work: (tx: Tx) => Promise<Result<string, SettingsRefusal>>,
): SettingKept {
  const may = allow(doer.actor, 'settings.keep');
  if (!may.ok) return may;
  const command = { key, name, staffId: doer.actor.id, input: asked, at: doer.at };
  return onceOnly<string, SettingsRefusal>(command, work);
}
