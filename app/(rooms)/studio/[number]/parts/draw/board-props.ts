import type { DrawnOver } from '@/lib/studio/reads/parts/drawing';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import type { ReliefSize } from '@/lib/studio/rules/parts/sizes';
import type { LengthSystem } from '@/lib/units/rules';

/** What the board is given: the job, what lies under its drawing, and what is kept of it. */
export type BoardProps = Readonly<{
  jobId: string;
  jobNumber: number;
  over: DrawnOver | null;
  /** 0 while nothing is kept. */
  version: number;
  shapes: readonly Shape[];
  /** Who kept it last; empty while nobody did. */
  by: string;
  size: ReliefSize | null;
  shrinkagePercent: string | null;
  lengthUnit: LengthSystem;
}>;
