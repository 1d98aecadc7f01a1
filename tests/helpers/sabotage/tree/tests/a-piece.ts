export const aPiece = 1;
