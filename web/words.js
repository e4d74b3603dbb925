// The language of the page: the one that a person has chosen, else the first of the browser's that
// there is. It says what the page says before the app runs; the app's own words are in game/words.
//
// ES2017 syntax only: an old browser must be able to read on and say what it lacks.
(function () {
  'use strict';

  const german = {
    'Hear a target sound, set your own until it matches, hand it in.':
      'Höre einen Zielklang, stelle deinen eigenen ein, bis beide gleich klingen, und gib ihn ab.',
    'Loading': 'Lädt',
    'Loading %1 of %2 MB': '%1 von %2 MB geladen',
    'Starting': 'Startet',
    'Try again': 'Noch einmal',
    'Reload': 'Neu laden',
    'Update this browser, or open the page in another one that is up to date.':
      'Aktualisiere diesen Browser oder öffne die Seite in einem anderen, der auf dem neuesten Stand ist.',
    'This browser has no WebAssembly, which the app is built with.':
      'Diesem Browser fehlt WebAssembly, womit die App gebaut ist.',
    'This browser has no WebGL 2, which draws the pictures.':
      'Diesem Browser fehlt WebGL 2, das die Bilder zeichnet.',
    'Turn on hardware acceleration in its settings, or open the page in another browser that is up to date.':
      'Schalte in seinen Einstellungen die Hardwarebeschleunigung ein oder öffne die Seite in einem anderen Browser, der auf dem neuesten Stand ist.',
    'This browser has no Web Audio, so nothing could be heard.':
      'Diesem Browser fehlt Web Audio, also wäre nichts zu hören.',
    'This browser’s Web Audio takes no sound that a page computes itself.':
      'Das Web Audio dieses Browsers nimmt keinen Klang an, den eine Seite selbst berechnet.',
    'The app could not be loaded. Check the connection, then try again.':
      'Die App konnte nicht geladen werden. Prüfe die Verbindung und versuche es noch einmal.',
    'The app could not be loaded: the server answered with status %1. It may just have been updated: try again.':
      'Die App konnte nicht geladen werden: Der Server antwortete mit dem Status %1. Vielleicht wurde sie gerade aktualisiert: Versuche es noch einmal.',
    'This browser cannot start the app (%1).': 'Dieser Browser kann die App nicht starten (%1).',
    'The download broke off. Check the connection, then try again.':
      'Das Laden brach ab. Prüfe die Verbindung und versuche es noch einmal.',
    'The app has stopped. Reload the page to go on.':
      'Die App ist stehen geblieben. Lade die Seite neu, um weiterzumachen.'
  };
  const tables = { en: {}, de: german };
  const key = 'partialcredit.language'; // its value is a BCP 47 tag

  function kept() {
    try {
      return localStorage.getItem(key);
    } catch (error) {
      return null; // closed to this page
    }
  }

  // The browser's settings, the most preferred first.
  function settings() {
    return Array.prototype.slice.call(navigator.languages || [navigator.language || 'en']);
  }

  // What a person prefers: their choice here, then the browser's settings.
  function preferred() {
    const choice = kept();
    return choice ? [choice].concat(settings()) : settings();
  }

  function choose(tags) {
    for (const tag of tags) {
      const primary = tag.toLowerCase().split('-')[0];
      if (Object.prototype.hasOwnProperty.call(tables, primary)) return primary;
    }
    return 'en';
  }

  let language = 'en';
  function use(tag) {
    language = choose([tag]);
    document.documentElement.lang = language;
  }

  // Puts the values where the language's text has %1, %2 and so on.
  function say(text, ...values) {
    return (tables[language][text] || text).replace(/%(\d)/g, function (_, n) { return values[n - 1]; });
  }

  // A number with so many decimals, and the sign before them that the language has.
  function number(value, decimals) {
    return value.toLocaleString(language, { minimumFractionDigits: decimals, maximumFractionDigits: decimals, useGrouping: false });
  }

  use(choose(preferred()));
  document.querySelectorAll('[data-words]').forEach(function (element) {
    element.textContent = say(element.textContent);
  });
  document.querySelectorAll('[data-words-label]').forEach(function (element) {
    element.setAttribute('aria-label', say(element.getAttribute('aria-label')));
  });
  const description = document.querySelector('meta[name="description"]');
  description.content = say(description.content);

  window.partialCredit.words = {
    say: say,
    number: number,
    preferred: preferred,
    // Changes the language, and keeps it where it is not the one of the browser's settings.
    choose: function (tag) {
      use(tag);
      try {
        if (language === choose(settings())) localStorage.removeItem(key);
        else localStorage.setItem(key, language);
      } catch (error) { /* then it holds for this visit */ }
    }
  };
})();
