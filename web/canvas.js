// Teaches the drawing library's canvas the manners of a page: Tab and the browser's own shortcuts
// work, focus shows, the notch is respected, and a change of zoom or screen keeps it crisp.
(function () {
  'use strict';

  // The canvas cancels every key it hears. Keys that belong to the browser must not reach it.
  function belongsToBrowser(event) {
    return event.key === 'Tab' || event.ctrlKey || event.metaKey || event.altKey || /^F\d+$/.test(event.key);
  }
  ['keydown', 'keyup'].forEach(function (kind) {
    window.addEventListener(kind, function (event) {
      if (event.target instanceof HTMLCanvasElement && belongsToBrowser(event)) {
        event.stopImmediatePropagation();
      }
    }, true);
  });

  // The library adds a viewport of its own, which would win over ours and lose viewport-fit.
  const viewport = document.querySelector('meta[name="viewport"]');
  function settle() {
    document.querySelectorAll('meta[name="viewport"]').forEach(function (meta) {
      if (meta !== viewport) meta.remove();
    });
    document.head.appendChild(viewport);
    const canvas = document.querySelector('canvas');
    if (canvas) canvas.tabIndex = 0;
  }

  // The library reads the device pixel ratio once. When it changes for good, only a reload makes the
  // canvas crisp again; the app keeps its state on the device.
  const ratio = window.devicePixelRatio;
  const key = 'partialcredit.reloads';
  const patience = 400; // ms: dragging a window across screens or zooming in steps ends in one reload
  const span = 10000; // ms
  const most = 3; // reloads within the span; more would be a loop
  let timer = 0;

  function mayReload() {
    try {
      const now = Date.now();
      const recent = JSON.parse(sessionStorage.getItem(key) || '[]').filter(function (t) {
        return now - t < span;
      });
      if (recent.length >= most) return false;
      sessionStorage.setItem(key, JSON.stringify(recent.concat(now)));
      return true;
    } catch (error) {
      return false; // without storage a loop could not be noticed
    }
  }

  function check() {
    clearTimeout(timer);
    timer = setTimeout(function () {
      if (window.devicePixelRatio !== ratio && mayReload()) location.reload();
    }, patience);
  }

  // Zooming resizes the page; moving the window to another screen may change the resolution alone.
  function watchResolution() {
    const query = window.matchMedia('(resolution: ' + window.devicePixelRatio + 'dppx)');
    if (!query.addEventListener) return;
    query.addEventListener('change', function () {
      watchResolution();
      check();
    }, { once: true });
  }
  window.addEventListener('resize', check);
  watchResolution();

  window.partialCredit.settleCanvas = settle;
})();
