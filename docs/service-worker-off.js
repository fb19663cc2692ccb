// The kill switch: deployed under the name service-worker.js it takes every former
// service worker of this site and all that it kept off its readers' devices.
self.addEventListener("install", () => self.skipWaiting());

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name.startsWith("rebrace-")).map((name) => caches.delete(name))))
      .then(() => self.registration.unregister())
      .then(() => self.clients.matchAll({ type: "window" }))
      .then((windows) => Promise.all(windows.map((each) => each.navigate(each.url)))),
  );
});
