// Keeps the program's own files, and the last seen copy of each page, for reading out of reach. What the machine says always comes first.
const files = 'closemown-files';
const copies = 'closemown-copies';
const away = '/offline';
const shell = [away, '/site.css', '/site.js', '/entering.js', '/holding.js', '/sending.js', '/waiting.js', '/live.js', '/manifest.webmanifest', '/icon.svg'];
const mostCopies = 40;
const patienceMs = 5000;

addEventListener('install', e => e.waitUntil(prepare()));
addEventListener('activate', e => e.waitUntil(clients.claim()));

addEventListener('fetch', e => {
  const request = e.request;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin) return;
  if (['style', 'script', 'image', 'font', 'manifest'].includes(request.destination)) e.respondWith(file(request));
  else if (request.mode === 'navigate' && !url.pathname.endsWith('.json')) e.respondWith(page(e, request, url));
  else if ((request.headers.get('Accept') ?? '').startsWith('text/html')) e.respondWith(quietly(e, request, url));
});

async function prepare() {
  const kept = await caches.open(files);
  await kept.addAll(shell.map(path => new Request(path, { cache: 'reload' })));
  // The page names its files by their fingerprints.
  const html = await (await kept.match(away)).text();
  const named = [...html.matchAll(/(?:href|src)="(\/[^"#?]+\.(?:css|js|svg|png))"/g)].map(m => m[1]);
  await kept.addAll([...new Set(named)].filter(path => !shell.includes(path)));
  await skipWaiting();
}

async function file(request) {
  const kept = await caches.open(files);
  try {
    const answer = await soon(fetch(request), request, kept);
    if (answer.ok) await kept.put(request, answer.clone());
    return answer;
  } catch {
    return (await kept.match(request)) ?? Response.error();
  }
}

async function page(e, request, url) {
  try {
    const answer = await soon(fetch(request), keyOf(url), await caches.open(copies));
    e.waitUntil(remember(answer.clone(), url));
    return answer;
  } catch {
    const copy = await (await caches.open(copies)).match(keyOf(url));
    return copy ? dated(copy) : (await (await caches.open(files)).match(away)) ?? Response.error();
  }
}

/** A page that a script asks for: kept as well, but never answered by a copy. */
async function quietly(e, request, url) {
  const answer = await fetch(request);
  e.waitUntil(remember(answer.clone(), url));
  return answer;
}

/** A network that is there but does not answer is out of reach too, where a copy can be shown instead. */
async function soon(answer, key, cache) {
  const held = await cache.match(key);
  if (!held) return answer;
  return Promise.race([answer, new Promise((_, fail) => setTimeout(() => fail(new Error('slow')), patienceMs))]);
}

async function remember(answer, url) {
  // The one page that leads elsewhere is that of a device which is not paired, or not any more: what it knew is then dropped.
  if (answer.status === 401 || answer.type === 'opaqueredirect' || (answer.redirected && new URL(answer.url).pathname === '/pair')) {
    await caches.delete(copies);
    return;
  }
  if (answer.status !== 200 || answer.redirected || ['/pair', away].includes(url.pathname) || !(answer.headers.get('Content-Type') ?? '').startsWith('text/html')) return;
  const kept = await caches.open(copies);
  const headers = new Headers(answer.headers);
  headers.set('X-Closemown-As-Of', new Date().toISOString());
  await kept.put(keyOf(url), new Response(await answer.arrayBuffer(), { headers }));
  const keys = await kept.keys();
  for (const old of keys.slice(0, Math.max(0, keys.length - mostCopies))) await kept.delete(old);
}

/** A page is the same whatever was just written on it. */
function keyOf(url) {
  const key = new URL(url);
  key.searchParams.delete('written');
  key.hash = '';
  return key.href;
}

async function dated(copy) {
  const html = (await copy.text()).replace(/<body\b/, `<body data-as-of="${copy.headers.get('X-Closemown-As-Of')}"`);
  return new Response(html, { headers: copy.headers });
}
