// Keeps a book on a device, every file of it, so that all of it is read without signal after one visit.
// The build writes BOOK above: the day it is as of, how many pages it has, and by its address how the
// SHA-256 of each file begins. A file that is not what was built is never kept: while a host is given
// a new book, pages of two days lie beside each other.
const DIGITS = 16;
const AT_ONCE = 6;
// another book on the same host keeps its own
const OURS = `handbook ${registration.scope} `;
const STORE = OURS + BOOK.version;

const addressOf = (name) => new URL(name, registration.scope).href;

// Put last into a store, so that one that has it is whole.
const LIST = addressOf("?files");

// What the build calls what is asked for, however it is asked for: by the folder, with words that were
// searched for, or as hosts write it that leave endings away.
const nameOf = (url) => {
  const asked = new URL(url);
  const root = new URL(registration.scope);
  if (asked.origin !== root.origin || !asked.pathname.startsWith(root.pathname)) return undefined;
  const path = asked.pathname.slice(root.pathname.length);
  return [path, `${path}.html`, `${path}index.html`].find((name) => Object.hasOwn(BOOK.files, name));
};

const digestOf = async (bytes) =>
  [...new Uint8Array(await crypto.subtle.digest("SHA-256", bytes))]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("")
    .slice(0, DIGITS);

const fetched = async (name) => {
  // a host may take two files of one second for the same: what is then not right is asked for whole
  for (const cache of ["no-cache", "reload"]) {
    const answer = await fetch(addressOf(name), { cache });
    const bytes = await answer.arrayBuffer();
    if (answer.ok && (await digestOf(bytes)) === BOOK.files[name]) {
      // made anew: no browser opens a kept answer that was sent on from another address
      return new Response(bytes, { headers: { "Content-Type": answer.headers.get("Content-Type") ?? "" } });
    }
  }
  throw new Error(`${name} did not come as it was built.`);
};

// The whole stores of earlier books in this place, with the files in them.
const olderStores = async () => {
  const older = [];
  for (const key of await caches.keys()) {
    if (!key.startsWith(OURS) || key === STORE) continue;
    const store = await caches.open(key);
    const list = await store.match(LIST);
    if (list) older.push({ store, files: await list.json() });
  }
  return older;
};

const copied = (name, older) =>
  older.find(({ files }) => files[name] === BOOK.files[name])?.store.match(addressOf(name));

const fill = async () => {
  const store = await caches.open(STORE);
  // what was kept before the signal went is not asked for again
  const kept = new Set((await store.keys()).map(({ url }) => url));
  const names = Object.keys(BOOK.files).filter((name) => !kept.has(addressOf(name)));
  const older = await olderStores();
  const keep = async () => {
    while (names.length) {
      const name = names.pop();
      await store.put(addressOf(name), (await copied(name, older)) ?? (await fetched(name)));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, keep));
  await store.put(LIST, new Response(JSON.stringify(BOOK.files)));
};

const clear = async () => {
  const older = (await caches.keys()).filter((key) => key.startsWith(OURS) && key !== STORE);
  await Promise.all(older.map((key) => caches.delete(key)));
  await clients.claim();
};

const kept = async (name, request) => {
  const store = await caches.open(STORE);
  return (await store.match(addressOf(name))) ?? fetch(request);
};

addEventListener("install", (event) => event.waitUntil(fill()));
addEventListener("activate", (event) => event.waitUntil(clear()));
addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET") return;
  const name = nameOf(request.url);
  if (name) event.respondWith(kept(name, request));
  // without signal a page that is no longer in the book leads to its first
  else if (request.mode === "navigate") {
    event.respondWith(fetch(request).catch(() => Response.redirect(registration.scope)));
  }
});
addEventListener("message", (event) => {
  if (event.data === "show") skipWaiting();
  else event.ports[0].postMessage({ asOf: BOOK.asOf, pages: BOOK.pages });
});
