/**
 * Names drawn together as they are said.
 *
 * @example list(['the mill', 'the boat', 'town']) // 'the mill, the boat and town'
 */
export function list(names: readonly string[], before = 'and'): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} ${before} ${last}`;
}
