import 'server-only';

export * from './writes/diary/book';
