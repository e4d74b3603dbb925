// Has the service worker (sw.js) keep the app on the device, and tells when a newer version waits there.
// A new version never comes by itself: only update() loads the page anew.
//
// ES2017 syntax only: an old browser must be able to read on and say what it lacks.
(function () {
  'use strict';

  const often = 3600000; // ms between two questions for a new version, while the page stays open
  let registration = null;
  let ready = false;
  let tell = function () {};
  let asked = 0;

  // A worker that waits while none is active is the first one, on its way in.
  function look() {
    if (ready || !registration.waiting || !registration.active) return;
    ready = true;
    tell();
  }

  function follow(worker) {
    if (worker) worker.addEventListener('statechange', look);
  }

  function ask() {
    if (document.hidden || performance.now() - asked < often) return;
    asked = performance.now();
    registration.update().catch(function () { /* no network: the next time */ });
  }

  // Asks the browser not to clear away what is kept. Some ask the learner in turn, so only those who
  // have come back are bothered.
  async function persist() {
    if (!navigator.serviceWorker.controller || !navigator.storage || !navigator.storage.persist) return;
    if (!(await navigator.storage.persisted())) await navigator.storage.persist();
  }

  window.partialCredit.offline = {
    // Begins; once the app has everything that it needs itself. Without a secure page, or where the
    // browser keeps nothing, the app goes on as a page that needs the network.
    open: async function () {
      try {
        const worker = navigator.serviceWorker.controller;
        if (worker) worker.postMessage('started');
        registration = await navigator.serviceWorker.register('sw.js', { updateViaCache: 'none' });
        asked = performance.now();
        follow(registration.installing);
        registration.addEventListener('updatefound', function () { follow(registration.installing); });
        look();
        document.addEventListener('visibilitychange', ask);
        await persist();
      } catch (error) { /* see above */ }
    },
    // Has the worker keep what reads codes too, now that somebody has used it.
    keepScanner: function () {
      if (!navigator.serviceWorker) return;
      navigator.serviceWorker.ready.then(function (r) { r.active.postMessage('keep scanner'); });
    },
    // A newer version waits on the device.
    ready: function () { return ready; },
    // Has f called when a newer version waits, now or later.
    onReady: function (f) {
      tell = f;
      if (ready) f();
    },
    // Goes over to the newer version. Another page may have done so already.
    update: function () {
      const next = registration && registration.waiting;
      let gone = false;
      const reload = function () {
        if (!gone) location.reload();
        gone = true;
      };
      if (!next) return reload();
      next.addEventListener('statechange', function () { if (next.state === 'activated') reload(); });
      navigator.serviceWorker.addEventListener('controllerchange', reload);
      next.postMessage('update');
    }
  };
})();
