import NextAuth from 'next-auth';
import type { NextRequest } from 'next/server';
import { authOptions } from '@/lib/access/auth-options';

type Context = { params: Promise<{ nextauth: string[] }> };

async function answer(request: NextRequest, context: Context): Promise<Response> {
  const response: unknown = await NextAuth(request, context, authOptions());
  return response instanceof Response ? response : new Response(null, { status: 500 });
}

export { answer as GET, answer as POST };
