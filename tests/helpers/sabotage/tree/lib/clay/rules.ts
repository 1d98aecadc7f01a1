import { client } from '../../generated/prisma/client';
import { aPiece } from '../../tests/a-piece';

export const shrinkage = [client, aPiece];
