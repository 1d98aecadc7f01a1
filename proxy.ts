import { NextResponse, type NextRequest } from 'next/server';

/**
 * The pages that a stranger may ask for; everything else leads to the door first. Under /c stand
 * the collectors' own pages, and under /calendar the diaries that telephones fetch: both open by
 * the secret in their address alone.
 */
const open = ['/sign-in', '/first-run', '/api/auth', '/c', '/calendar'];
const sessionCookies = ['next-auth.session-token', '__Secure-next-auth.session-token'];

/**
 * Stands before every page: gives it a nonce so that only our own scripts run, sets the headers
 * that keep it to itself, and leads those without a session's cookie to the door. Whether that
 * session is open, and what it may see, is asked again by the page itself.
 */
export function proxy(request: NextRequest): NextResponse {
  const nonce = freshNonce();
  const policy = contentPolicy(nonce);
  const stranger = isStranger(request);
  const response = stranger ? leadToDoor(request) : letPass(request, nonce, policy);
  response.headers.set('Content-Security-Policy', policy);
  for (const [name, value] of Object.entries(plainHeaders)) response.headers.set(name, value);
  if (isHttps(request)) response.headers.set('Strict-Transport-Security', 'max-age=15552000');
  if (isBySecret(request)) response.headers.set('X-Robots-Tag', 'noindex, nofollow, noarchive');
  if (stranger || !isKept(request)) response.headers.set('Cache-Control', 'no-store');
  return response;
}

export const config = { matcher: ['/((?!_next/static|_next/image|favicon.ico).*)'] };

const plainHeaders = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  // Not "no-referrer": a form sent without JavaScript would then hide where it comes from. No other
  // house is told an address of ours, so the secret of a collector's page stays here with this too.
  'Referrer-Policy': 'same-origin',
  'Permissions-Policy':
    'camera=(self), microphone=(), geolocation=(), payment=(), usb=(), browsing-topics=()',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
} as const;

function contentPolicy(nonce: string): string {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

function freshNonce(): string {
  return btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(18))));
}

function letPass(request: NextRequest, nonce: string, policy: string): NextResponse {
  const headers = new Headers(request.headers);
  headers.set('x-nonce', nonce);
  headers.set('Content-Security-Policy', policy);
  if (isReadable(request.nextUrl.pathname)) return NextResponse.next({ request: { headers } });
  const nowhere = request.nextUrl.clone();
  nowhere.pathname = '/not-an-address';
  return NextResponse.rewrite(nowhere, { request: { headers } });
}

/** An address that is no text, such as one with a lone %FF in it, leads nowhere. */
function isReadable(path: string): boolean {
  try {
    decodeURIComponent(path);
    return true;
  } catch {
    return false;
  }
}

function isStranger(request: NextRequest): boolean {
  const { pathname } = request.nextUrl;
  if (open.some((path) => pathname === path || pathname.startsWith(`${path}/`))) return false;
  return !sessionCookies.some((name) => request.cookies.has(name));
}

/** 303, so that a form that was sent is not sent on to the door. */
function leadToDoor(request: NextRequest): NextResponse {
  const door = request.nextUrl.clone();
  const { pathname, search } = request.nextUrl;
  door.pathname = '/sign-in';
  door.search = '';
  if (request.method === 'GET' && pathname !== '/') door.searchParams.set('to', pathname + search);
  return NextResponse.redirect(door, 303);
}

/** A kept picture never changes, and says itself how long a browser may keep it. */
function isKept(request: NextRequest): boolean {
  return request.nextUrl.pathname.startsWith('/files/');
}

function isBySecret(request: NextRequest): boolean {
  return /^\/(c|calendar)\//.test(request.nextUrl.pathname);
}

function isHttps(request: NextRequest): boolean {
  const told = request.headers.get('x-forwarded-proto');
  return (told ?? request.nextUrl.protocol).startsWith('https');
}
