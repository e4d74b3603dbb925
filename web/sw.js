// Keeps every file of one build on the device, so that the app opens and plays without a network. A new
// build is fetched beside the old one and waits until the learner asks for it.
'use strict';

// The build fills these in (cmd/desk/site/worker.go).
const build = ''; // an id that changes with any file
const files = {}; // each name, relative to this script, with its integrity (W3C Subresource Integrity)
const later = {}; // those that are kept only once they have been used
const developing = false; // then the network goes first, so that a reload shows what was changed

const page = 'index.html';
const scope = self.registration.scope;
// An origin may hold other apps, and this one in several folders: each has caches of its own.
const family = 'partialcredit ' + scope + ' ';
const mine = family + build;

function address(name) { return new URL(name, scope).href; }

// What lies under a name with a hash never changes, whichever build it came with.
function lasts(name) { return /\.[0-9a-f]{12}\.[a-z]+$/.test(name); }

// The page has just loaded most of the files, so they come from the browser's own cache; what an earlier
// build shares with this one comes from there. The integrity keeps out the login page of a network that
// answers everything, and files of a build that was published meanwhile; the browser tries again at the
// next visit.
async function keep(name) {
  const cache = await caches.open(mine);
  let response = lasts(name) ? await caches.match(address(name), { ignoreVary: true }) : undefined;
  if (!response) {
    response = await fetch(address(name), { integrity: files[name] || later[name], cache: lasts(name) ? 'default' : 'no-cache' });
    if (!response.ok) throw new Error(name + ' cannot be kept: the server answered with status ' + response.status);
  }
  // A page may not be opened with the result of a redirection.
  if (response.redirected) response = new Response(response.body, { headers: response.headers });
  await cache.put(address(name), response);
}

// One after the other: a slow device is playing sound meanwhile.
async function keepAll() {
  for (const name of Object.keys(files)) await keep(name);
  if (await used()) await keepLater();
}

async function keepLater() {
  for (const name of Object.keys(later)) await keep(name);
}

// Whether an earlier build has kept what is kept later.
async function used() {
  for (const name of await caches.keys()) {
    if (!name.startsWith(family)) continue;
    const requests = await (await caches.open(name)).keys();
    if (requests.some(function (request) { return request.url.startsWith(address('scanner.')); })) return true;
  }
  return false;
}

// Removes the caches of earlier builds, unless a second page is open that may live on one of them. While
// another worker is on its way or waits, one of the caches is its own.
async function sweep() {
  const names = await caches.keys();
  const open = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const pages = open.filter(function (client) { return client.url.startsWith(scope); });
  if (pages.length > 1 || self.registration.installing || self.registration.waiting) return;
  for (const name of names) {
    if (name.startsWith(family) && name !== mine) await caches.delete(name);
  }
}

async function kept(name) {
  const cache = await caches.open(mine);
  return cache.match(address(name), { ignoreVary: true });
}

async function givePage(request) {
  if (developing) {
    try { return await fetch(request); } catch (error) { /* the server is gone: the kept page it is */ }
  }
  return (await kept(page)) || fetch(request);
}

// A page of an earlier build finds its files in the cache of that build, also when the server has them
// no more. Where a file of this build is neither here nor there, the build is given up: then the next
// visit gets what the server has, and not this page again.
async function give(name, request) {
  const found = (await kept(name)) || (await caches.match(address(name), { ignoreVary: true }));
  if (found) return found;
  const response = await fetch(request);
  if (name in files && response.status === 404) await caches.delete(mine);
  return response;
}

self.addEventListener('install', function (event) {
  if (developing) self.skipWaiting();
  event.waitUntil(keepAll());
});

self.addEventListener('activate', function (event) { event.waitUntil(sweep()); });

self.addEventListener('message', function (event) {
  if (event.data === 'update') self.skipWaiting();
  // Not at the navigation itself: the page that is left may still count as open then.
  if (event.data === 'started') event.waitUntil(sweep());
  if (event.data === 'keep scanner') event.waitUntil(keepLater().catch(function () { /* the next time */ }));
});

self.addEventListener('fetch', function (event) {
  const request = event.request;
  const asked = request.url.split(/[?#]/)[0];
  if (request.method !== 'GET' || !asked.startsWith(scope)) return;
  const name = asked.slice(scope.length);
  if (request.mode !== 'navigate') {
    event.respondWith(give(name, request));
  } else if (name === '' || name === page) {
    event.respondWith(givePage(request));
  }
});
