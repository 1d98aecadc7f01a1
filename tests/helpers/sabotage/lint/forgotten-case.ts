/** Forgets one of the three. */
export function wordFor(kind: 'tile' | 'plaque' | 'bowl'): string {
  switch (kind) {
    case 'tile':
      return 'Tile';
    case 'plaque':
      return 'Plaque';
  }
  return '';
}
