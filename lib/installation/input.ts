export * from './input/diary/book';
