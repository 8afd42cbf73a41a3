/**
 * The app without a network: one store of files for each build, filled whole before the build is offered. A new build
 * waits until the maker agrees to it; only then does it take over, and the old build's files go.
 */
interface BuiltFiles {
  readonly id: string;
  readonly files: readonly string[];
}

/** Put in when the app is built (`build/offline-plugin.ts`). */
declare const BUILT: BuiltFiles;

interface ExtendableEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface FetchEvent extends ExtendableEvent {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}

interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(name: "install" | "activate", listener: (event: ExtendableEvent) => void): void;
  addEventListener(name: "fetch", listener: (event: FetchEvent) => void): void;
  addEventListener(name: "message", listener: (event: MessageEvent) => void): void;
}

const scope = self as unknown as Scope;
const STORE_PREFIX = "mouldwright ";
const STORE = `${STORE_PREFIX}${BUILT.id}`;

scope.addEventListener("install", (event) => {
  event.waitUntil(fill());
});

scope.addEventListener("activate", (event) => {
  event.waitUntil(clearOldStores().then(() => scope.clients.claim()));
});

scope.addEventListener("message", ({ data }) => {
  if (data === "take over") void scope.skipWaiting();
});

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(scope.registration.scope)) return;
  event.respondWith(answer(request));
});

/** All files or none: a build that is not whole is never offered. Asked past the browser's own cache. */
async function fill(): Promise<void> {
  const store = await caches.open(STORE);
  await store.addAll(BUILT.files.map((file) => new Request(addressOf(file), { cache: "no-cache" })));
}

async function clearOldStores(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(STORE_PREFIX) && name !== STORE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

/** From this build's store; what is not in it is asked of the server. */
async function answer(request: Request): Promise<Response> {
  const store = await caches.open(STORE);
  const isPage = request.mode === "navigate";
  const kept = await store.match(isPage ? addressOf("index.html") : request, { ignoreSearch: isPage });
  return kept ?? fetch(request);
}

function addressOf(file: string): string {
  return new URL(file, scope.registration.scope).href;
}
