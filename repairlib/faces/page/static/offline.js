// The page on the device: kept after the first visit, so that it starts without a network.

/** Keep the page; `newVersion(load)` is told when a newer one waits, and `load()` brings it. */
export const keepForOffline = async ({ newVersion }) => {
  if (!navigator.serviceWorker) return;
  let isKept = Boolean(navigator.serviceWorker.controller);
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (isKept) location.reload(); // another version than the one that is shown
    isKept = true;
  });
  let registration;
  try {
    registration = await navigator.serviceWorker.register('./service.js', { updateViaCache: 'none' });
  } catch {
    // A private window, or storage that is refused: the page works, from the network.
  }
  if (!registration) return;
  const offer = (waiting) => newVersion(() => waiting.postMessage('load'));
  const watch = (coming) => coming?.addEventListener('statechange', () => {
    if (coming.state === 'installed' && navigator.serviceWorker.controller) offer(coming);
  });
  if (registration.waiting && navigator.serviceWorker.controller) offer(registration.waiting);
  watch(registration.installing);
  registration.addEventListener('updatefound', () => watch(registration.installing));
};
