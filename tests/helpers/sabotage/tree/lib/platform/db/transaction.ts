export const inTransaction = 1;
