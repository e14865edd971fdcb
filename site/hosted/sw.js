// The worker of the hosted page: keeps its few files under a name made of their
// content, serves them from there, and throws older copies away. The browser
// looks for a new one whenever the page is opened; a page that is open has all it
// needs in itself, so that a new copy disturbs no job and is shown on the next
// opening.
const FILES = "{{files}}".split(" ");
const MINE = `moldwright ${self.registration.scope} `, CACHE = MINE + "{{hash}}";

self.addEventListener("install", (e) => {
  self.skipWaiting();
  e.waitUntil(caches.open(CACHE).then((c) => c.addAll(FILES.map((f) => new Request(f, { cache: "reload" })))));
});

self.addEventListener("activate", (e) => {
  e.waitUntil(caches.keys()
    .then((names) => Promise.all(names.filter((n) => n.startsWith(MINE) && n !== CACHE).map((n) => caches.delete(n))))
    .then(() => self.clients.claim()));
});

self.addEventListener("fetch", (e) => {
  const { request } = e, url = new URL(request.url);
  if (request.method !== "GET" || !url.href.startsWith(self.registration.scope)) return;
  const name = url.pathname.slice(new URL(self.registration.scope).pathname.length);
  const file = name === "" || name === "index.html" ? "./" : name;
  if (FILES.includes(file)) e.respondWith(caches.open(CACHE).then((c) => c.match(file)).then((kept) => kept ?? fetch(request)));
});
