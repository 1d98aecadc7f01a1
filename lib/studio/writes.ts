import 'server-only';

export { beginMore, beginPiecesAnew, loseJobPieces, losePieces } from './writes/jobs/losing';
export { moveJobOn, movePieces, undoMove } from './writes/jobs/moving';
export { openJob, openStudioJob } from './writes/jobs/opening';
export type { JobToOpen, OpenedJob, PieceSize } from './writes/jobs/opening';
export type { Moved } from './writes/jobs/keep-move';
