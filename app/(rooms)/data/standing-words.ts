import type { Load } from '@/lib/data/reads';

/** Where a file that is brought in stands, in one sentence. */
export function standingWords(load: Pick<Load, 'standing' | 'outcome'>): string {
  switch (load.standing) {
    case 'going':
      return 'It is being brought in.';
    case 'stopping':
      return 'It is being stopped.';
    case 'kept':
      return load.outcome === '' ? 'It was brought in.' : load.outcome;
    case 'not_kept':
      return load.outcome;
    case 'half_way':
      return 'It stopped half-way, and nothing was kept. Bring the file in again.';
  }
}
