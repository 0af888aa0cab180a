/**
 * Keeps the app and what it last fetched on the tablet, so that it opens and works without a network.
 *
 * The app's files have a hash in their name and are kept for good; pages and data come from the network
 * first, and from here when that is away or too slow.
 */
const CACHE = "loomwright-2";
const SLOW_MS = 4000;
const DATA = /^\/api\/v1\/(session|people|repairs|jobs(\/[^/]+(\/(state|practice))?)?)$/;

self.addEventListener("install", (event) => event.waitUntil(takeIn().then(() => self.skipWaiting())));

self.addEventListener("activate", (event) => event.waitUntil(forgetOld().then(() => self.clients.claim())));

self.addEventListener("fetch", (event) => {
	const { request } = event;
	const { origin, pathname } = new URL(request.url);
	if (request.method !== "GET" || origin !== self.location.origin) return;
	if (request.mode === "navigate") event.respondWith(networkFirst(request, "/"));
	else if (pathname.startsWith("/assets/")) event.respondWith(keptFirst(request));
	else if (DATA.test(pathname)) event.respondWith(networkFirst(request, request.url));
});

/** The first page and every file that it or one of its scripts names, whether it was used yet or not. */
async function takeIn() {
	const cache = await caches.open(CACHE);
	const page = await fetch("/", { headers: { accept: "text/html" } });
	if (!page.ok) throw new Error(`the first page: status ${page.status}`);
	await cache.put("/", page.clone());
	const wanted = namesIn(await page.text());
	for (const path of wanted) {
		const file = (await cache.match(path)) ?? (await fetch(path));
		if (!file.ok) continue;
		await cache.put(path, file.clone());
		if (path.endsWith(".js")) for (const name of namesIn(await file.text())) wanted.add(name);
	}
}

/** Files named in a page or script: `/assets/a-1f.js`, `assets/a-1f.js`, or `./a-1f.js` beside a script. */
function namesIn(text) {
	const names = text.matchAll(/["'`(](?:\/?assets\/|\.\/)([\w-]+\.(?:js|css|wasm|woff2))["'`)]/g);
	return new Set([...names].map((found) => `/assets/${found[1]}`));
}

async function forgetOld() {
	for (const name of await caches.keys()) if (name !== CACHE) await caches.delete(name);
}

async function keptFirst(request) {
	const cache = await caches.open(CACHE);
	const kept = await cache.match(request);
	if (kept) return kept;
	const answer = await fetch(request);
	if (answer.ok) await cache.put(request, answer.clone());
	return answer;
}

async function networkFirst(request, key) {
	const cache = await caches.open(CACHE);
	const kept = await cache.match(key);
	const asked = fetch(request).then(async (answer) => {
		if (answer.ok) await cache.put(key, answer.clone());
		return answer;
	});
	if (!kept) return asked;
	const slow = new Promise((resolve) => setTimeout(() => resolve(kept), SLOW_MS));
	return Promise.race([asked.catch(() => kept), slow]);
}
