// What leaves the page and what comes to it: files, the clipboard, what the system shares, paper. The Go
// side is game/browser/files_js.go.
//
// ES2017 syntax only: an old browser must be able to read on and say what it lacks.
(function () {
  'use strict';

  let chooser = null; // held here: nothing else holds it until a file is chosen

  // Reads one file after the other. What cannot be read, or is too much for all to be most bytes, has no
  // data.
  async function read(files, most) {
    const list = [];
    for (const file of Array.from(files)) { // a copy: the browser's own list ends with its event
      let data = null;
      if (file.size <= most) {
        try {
          data = new Uint8Array(await file.arrayBuffer());
          most -= data.length;
        } catch (error) { /* a folder, or it is gone */ }
      }
      list.push({ name: file.name, data: data });
    }
    return list;
  }

  function open(accept, many, most, opened) {
    chooser = document.createElement('input');
    chooser.type = 'file';
    chooser.accept = accept;
    chooser.multiple = many;
    chooser.addEventListener('change', async function () { opened(await read(this.files, most)); });
    chooser.click();
  }

  function save(name, type, data) {
    const address = URL.createObjectURL(new Blob([data], { type: type }));
    const link = document.createElement('a');
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(function () { URL.revokeObjectURL(address); }, 60000); // by when every browser has taken it
  }

  // The older way, which also works where the page is not secure.
  function copyOnce(text) {
    let copied = false;
    function give(e) {
      e.clipboardData.setData('text/plain', text);
      e.preventDefault();
      e.stopImmediatePropagation();
      copied = true;
    }
    window.addEventListener('copy', give, true);
    try {
      document.execCommand('copy');
    } catch (error) { /* then it is not copied */ }
    window.removeEventListener('copy', give, true);
    return copied;
  }

  async function copy(text, said) {
    let copied = false;
    if (navigator.clipboard) {
      try {
        await navigator.clipboard.writeText(text);
        copied = true;
      } catch (error) { /* the older way */ }
    }
    said(copied || copyOnce(text));
  }

  function canShare() { return typeof navigator.share === 'function'; }

  // Says "shared", "left" where the person thought better of it, or "failed".
  async function share(what, name, type, data, said) {
    if (data && navigator.canShare) {
      const files = [new File([data], name, { type: type })];
      if (navigator.canShare({ files: files })) what.files = files;
    }
    try {
      await navigator.share(what);
    } catch (error) {
      return said(error.name === 'AbortError' ? 'left' : 'failed');
    }
    said('shared');
  }

  // Prints a document in a frame that is not seen. The page's policy holds there too: no script runs, and
  // no style that stands in the document, so the styles are handed over apart. The frame stays until the
  // next one: nobody can tell on every system when the paper is done.
  function print(page, styles, said) {
    const old = document.getElementById('paper');
    if (old) old.remove();
    const frame = document.createElement('iframe');
    frame.id = frame.title = 'paper';
    frame.tabIndex = -1;
    frame.setAttribute('aria-hidden', 'true');
    frame.srcdoc = page;
    frame.addEventListener('load', function () {
      const inside = frame.contentWindow;
      try {
        const sheet = new inside.CSSStyleSheet();
        sheet.replaceSync(styles);
        inside.document.adoptedStyleSheets = [sheet];
        inside.print(); // without the focus, which would stay there and take the app's keys
      } catch (error) {
        frame.remove();
        return said(false);
      }
      said(true);
    }, { once: true });
    document.body.appendChild(frame);
  }

  // Whatever is dropped on the page, or pasted, comes to the app, but for what text fields take. A browser
  // would leave the page for a file that is dropped on it.
  function watch(most, dropped, pasted) {
    function ownField(e) { return e.target.classList && e.target.classList.contains('field'); }
    function hasFiles(e) { return Array.from(e.dataTransfer.types).indexOf('Files') >= 0; }
    async function take(transfer) {
      if (transfer.files.length > 0) return dropped(await read(transfer.files, most));
      const text = transfer.getData('text/plain');
      if (text) pasted(text);
    }
    window.addEventListener('dragover', function (e) {
      if (ownField(e) && !hasFiles(e)) return;
      e.preventDefault();
      e.dataTransfer.dropEffect = 'copy';
    });
    window.addEventListener('drop', function (e) {
      if (ownField(e) && !hasFiles(e)) return;
      e.preventDefault();
      take(e.dataTransfer);
    });
    window.addEventListener('paste', function (e) {
      if (ownField(e) || !e.clipboardData) return;
      e.preventDefault();
      take(e.clipboardData);
    });
  }

  window.partialCredit.files = {
    open: open, save: save, copy: copy, canShare: canShare, share: share, print: print, watch: watch
  };
})();
