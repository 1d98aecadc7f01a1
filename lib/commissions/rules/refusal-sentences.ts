/** A sentence for every refusal of a list, made from the facts that explain it. */
export type Sentences<Facts> = {
  [Code in keyof Facts]: (refusal: { readonly code: Code } & Facts[Code]) => string;
};
