import type { ReliefSize } from '@/lib/studio/rules/parts/sizes';
import { formatLength, parseLength, type LengthSystem } from '@/lib/units/rules';

/** How large the relief is, as it is typed; null while it cannot be read. */
export function sizeTyped(width: string, height: string, unit: LengthSystem): ReliefSize | null {
  const [widthUm, heightUm] = [parseLength(width, unit), parseLength(height, unit)];
  if (!widthUm.ok || !heightUm.ok) return null;
  return { widthUm: widthUm.value, heightUm: heightUm.value };
}

/** A length as a field begins with it: without its unit, which stands in the field. */
export function lengthShown(um: number | undefined, unit: LengthSystem): string {
  return um === undefined ? '' : formatLength(um, unit).replace(/ ?(in|mm)$/, '');
}
