export { client } from '../../../generated/prisma/client';
