/** Something in a material of a glaze that has to be minded by name. */
export type Hazard = {
  readonly key:
    | 'lead'
    | 'cadmium'
    | 'barium'
    | 'manganese'
    | 'chromium'
    | 'copper'
    | 'cobalt'
    | 'nickel'
    | 'vanadium'
    | 'lithium'
    | 'stain'
    | 'silica';
  readonly words: string;
};

const known: readonly (Hazard & { readonly names: RegExp })[] = [
  {
    key: 'lead',
    names: /\b(lead|litharge|minium|galena)\b/i,
    words:
      'Lead poisons by dust, by hand to mouth and from the fired glaze: not for anything that holds food.',
  },
  {
    key: 'cadmium',
    names: /\bcadmium\b/i,
    words: 'Cadmium poisons by dust and by fumes of the firing: gloves, a respirator and the vent.',
  },
  {
    key: 'barium',
    names: /\b(barium|baryt\w*|witherite)\b/i,
    words:
      'Barium carbonate is poisonous when it is swallowed or breathed: gloves and a respirator.',
  },
  {
    key: 'manganese',
    names: /\b(manganese|pyrolusite)\b/i,
    words:
      'Manganese harms the nerves, by its dust and by the fumes of the firing: a respirator and the vent.',
  },
  {
    key: 'chromium',
    names: /\b(chrome|chromium|chromate|dichromate)\b/i,
    words: 'Chromium compounds harm skin and lungs: gloves and a respirator.',
  },
  {
    key: 'copper',
    names: /\b(copper|malachite)\b/i,
    words: 'Copper gives off fumes in the kiln and can come out of a fired glaze into food.',
  },
  {
    key: 'cobalt',
    names: /\bcobalt\b/i,
    words: 'Cobalt harms the lungs as dust and can upset the skin: gloves and a respirator.',
  },
  {
    key: 'nickel',
    names: /\bnickel\b/i,
    words: 'Nickel upsets the skin and harms the lungs as dust: gloves and a respirator.',
  },
  {
    key: 'vanadium',
    names: /\bvanad\w*/i,
    words: 'Vanadium compounds irritate eyes and lungs: gloves and a respirator.',
  },
  {
    key: 'lithium',
    names: /\b(lithium|spodumene|lepidolite|petalite)\b/i,
    words: 'Lithium carbonate is harmful when it is swallowed: gloves, and nothing is eaten there.',
  },
  {
    key: 'stain',
    names: /\b(stain|encapsulated|inclusion)\b/i,
    words: 'A stain may hold cadmium, chromium or vanadium: its maker’s safety sheet says which.',
  },
  {
    key: 'silica',
    names:
      /\b(silica|quartz|flint|feldspar|felspar|syenite|kaolin|china clay|ball clay|talc|clay|ash)\b/i,
    words:
      'Its dust holds fine silica, which harms the lungs for good: a respirator that fits, and everything wiped wet.',
  },
];

/**
 * What to mind of the materials of a recipe, by their names, the worst first.
 *
 * It knows common names only; what a maker's own name stands for, their safety sheet says.
 *
 * @source common practice; the maker's safety sheet goes before it
 * @example hazardsOf(['Barium carbonate', 'Silica']) // barium, then silica
 */
export function hazardsOf(
  materials: readonly string[],
): readonly (Hazard & { readonly materials: readonly string[] })[] {
  return known
    .map(({ key, words, names }) => ({
      ...{ key, words },
      materials: materials.filter((material) => names.test(material)),
    }))
    .filter((hazard) => hazard.materials.length > 0);
}
