export * from './rules/diary/booking';
