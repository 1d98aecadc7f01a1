import 'server-only';

export * from './reads/diary/listed';
