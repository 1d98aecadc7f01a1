/** What a command answers: the value, or a refusal that carries the facts needed to explain it. */
export type Result<Value, Refusal> = { ok: true; value: Value } | { ok: false; refusal: Refusal };

/** A command that went through. */
export function ok<Value>(value: Value): { ok: true; value: Value } {
  return { ok: true, value };
}

/** A command that the business says no to; never an exception. */
export function refuse<Refusal>(refusal: Refusal): { ok: false; refusal: Refusal } {
  return { ok: false, refusal };
}
