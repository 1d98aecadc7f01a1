import 'server-only';

export * from './reads/diary/appointment';
export * from './reads/diary/listed';
