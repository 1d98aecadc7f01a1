export * from './rules/diary/booking';
export * from './rules/diary/change';
export * from './rules/diary/kinds';
export * from './rules/diary/when';
export * from './rules/diary/questions';
