// Reads QR codes: with the device's camera, shown over a part of the page, or from pictures that a person
// opens. Where the browser reads codes itself (WICG Shape Detection), it does; elsewhere a WebAssembly of
// its own does so in a thread beside the page (scanner.js), loaded when it is first needed. No picture
// leaves the device.
//
// ES2017 syntax only: an old browser must be able to read on and say what it lacks.
(function () {
  'use strict';

  const script = document.currentScript;
  const address = script.getAttribute('data-scanner');
  const thread = script.getAttribute('data-scanner-thread');

  const pause = 60; // ms between two looks at the camera
  const once = 2000; // ms for which a code that stays in view counts as read
  const sizes = [1000, 2000, 4000]; // of the longer side of a picture, tried one after the other, in pixels

  let wanted = null; // what was asked for: { rect, found, failed }
  let video = null;
  let turn = 0; // a number for each time that the camera goes on or off
  let last = '', lastAt = -once;

  // A failure has a name that the app has a sentence for.
  function trouble(name) { const error = new Error(name); error.trouble = name; return error; }

  // The names are those of getUserMedia's exceptions (W3C Media Capture and Streams, 10.2).
  function refusal(error) {
    if (error.trouble) return error.trouble;
    if (error.name === 'NotAllowedError' || error.name === 'SecurityError') return 'denied';
    if (error.name === 'NotFoundError' || error.name === 'OverconstrainedError') return 'none';
    return 'busy';
  }

  let own; // the browser's own reader, null where it has none
  async function browserReader() {
    if (own !== undefined) return own;
    try {
      const formats = window.BarcodeDetector ? await BarcodeDetector.getSupportedFormats() : [];
      own = formats.includes('qr_code') ? new BarcodeDetector({ formats: ['qr_code'] }) : null;
    } catch (error) {
      own = null;
    }
    return own;
  }

  let worker = null; // a promise of it
  let answer = null; // to the picture that the worker has
  function open() {
    if (worker) return worker;
    worker = new Promise(function (ready, failed) {
      const w = new Worker(thread);
      w.onmessage = function (event) {
        if (event.data === 'ready') return ready(w);
        const to = answer;
        answer = null;
        if (event.data.failed) broken(to ? to.failed : failed);
        else if (to) to.read(event.data.text);
      };
      w.onerror = function (event) {
        event.preventDefault();
        broken(answer ? answer.failed : failed);
      };
      function broken(tell) {
        w.terminate();
        worker = answer = null;
        tell(trouble('reader'));
      }
      w.postMessage({ load: new URL(address, document.baseURI).href });
    });
    worker.then(function () { window.partialCredit.offline.keepScanner(); }, function () { /* told where it was asked for */ });
    return worker;
  }

  // One picture at a time goes to the worker.
  let queue = Promise.resolve();
  function readElsewhere(image) {
    const next = queue.then(open).then(function (w) {
      return new Promise(function (read, failed) {
        answer = { read: read, failed: failed };
        w.postMessage({ rgba: image.data.buffer, w: image.width, h: image.height }, [image.data.buffer]);
      });
    });
    queue = next.catch(function () { /* told to whom it concerns */ });
    return next;
  }

  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d', { willReadFrequently: true });

  // The pixels of a picture of w by h, no longer than a side.
  function pixels(source, w, h, side) {
    const by = Math.min(1, side / Math.max(w, h));
    canvas.width = Math.max(1, Math.round(w * by));
    canvas.height = Math.max(1, Math.round(h * by));
    pen.fillStyle = '#fff'; // behind what is transparent
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(source, 0, 0, canvas.width, canvas.height);
    return pen.getImageData(0, 0, canvas.width, canvas.height);
  }

  // Texts of the codes that the browser finds, none where it cannot look just now.
  async function readHere(source) {
    const reader = await browserReader();
    if (!reader) return [];
    try {
      return (await reader.detect(source)).map(function (code) { return code.rawValue; });
    } catch (error) {
      return [];
    }
  }

  async function look(mine) {
    let texts = [];
    if (await browserReader()) {
      texts = await readHere(video);
    } else {
      const text = await readElsewhere(pixels(video, video.videoWidth, video.videoHeight, 1920));
      if (text !== null) texts = [text];
    }
    if (mine !== turn) return;
    const now = performance.now();
    texts.forEach(function (text) {
      const again = text === last && now - lastAt < once;
      last = text;
      lastAt = now;
      if (!again && mine === turn) wanted.found(text); // which may stop it
    });
  }

  async function watch(mine) {
    while (mine === turn) {
      if (video.readyState >= video.HAVE_CURRENT_DATA && video.videoWidth > 0) await look(mine);
      await new Promise(function (done) { setTimeout(done, pause); });
    }
  }

  function place(rect) {
    const style = video.style;
    style.position = 'absolute';
    style.pointerEvents = 'none';
    style.objectFit = 'cover';
    style.left = rect.x + 'px';
    style.top = rect.y + 'px';
    style.width = rect.w + 'px';
    style.height = rect.h + 'px';
  }

  function stopTracks(stream) { stream.getTracks().forEach(function (track) { track.stop(); }); }

  async function on() {
    const mine = ++turn;
    try {
      if (!navigator.mediaDevices || !navigator.mediaDevices.getUserMedia) throw trouble('insecure');
      const stream = await navigator.mediaDevices.getUserMedia({
        audio: false,
        video: { facingMode: 'environment', width: { ideal: 1920 }, height: { ideal: 1080 } }
      });
      if (mine !== turn) return stopTracks(stream); // it was stopped before the camera came
      video = document.createElement('video');
      video.id = 'camera';
      video.muted = true;
      video.setAttribute('playsinline', ''); // else iPhones fill the screen
      video.setAttribute('aria-hidden', 'true'); // the app says what it is for
      place(wanted.rect);
      document.body.appendChild(video);
      video.srcObject = stream;
      stream.getVideoTracks()[0].onended = function () { if (mine === turn) fail('busy'); }; // it was pulled out
      await video.play();
      await watch(mine);
    } catch (error) {
      if (mine === turn) fail(refusal(error));
    }
  }

  // The camera's light goes out.
  function off() {
    turn++;
    if (!video) return;
    if (video.srcObject) stopTracks(video.srcObject);
    video.remove();
    video = null;
  }

  function fail(name) {
    const asked = wanted;
    wanted = null;
    off();
    if (asked) asked.failed(name);
  }

  document.addEventListener('visibilitychange', function () {
    if (document.hidden) off(); else if (wanted && !video) on();
  });
  window.addEventListener('pagehide', off);

  async function readPicture(blob) {
    let picture;
    try {
      picture = await createImageBitmap(blob);
    } catch (error) {
      throw trouble('unreadable');
    }
    try {
      const texts = await readHere(picture);
      if (texts.length > 0) return texts;
      const long = Math.max(picture.width, picture.height);
      for (let i = 0; i < sizes.length && (i === 0 || long > sizes[i - 1]); i++) {
        const text = await readElsewhere(pixels(picture, picture.width, picture.height, sizes[i]));
        if (text !== null) return [text];
      }
    } finally {
      picture.close();
    }
    throw trouble('nothing');
  }

  window.partialCredit.scan = {
    // Shows the camera over rect, { x, y, w, h } in CSS pixels, and calls found with the text of each code
    // that comes into view; or failed, once, with what is wrong. Where the camera is on, it is moved.
    start: function (rect, found, failed) {
      const running = wanted !== null;
      wanted = { rect: rect, found: found, failed: failed };
      if (video) place(rect);
      if (!running) {
        last = '';
        if (!document.hidden) on();
      }
    },
    stop: function () {
      wanted = null;
      off();
    },
    // Reads the codes in a picture, a Uint8Array as it lies in a file, and calls done with their texts and
    // with the name of what is wrong, '' where nothing is.
    picture: async function (data, done) {
      try {
        done(await readPicture(new Blob([data])), '');
      } catch (error) {
        done([], error.trouble || 'unreadable');
      }
    }
  };
})();
