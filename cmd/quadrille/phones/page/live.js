// Keeps the page as the desk has it. Without this script the page works by looking again.
(function () {
  "use strict";

  const kept = "quadrille-me"; // the key of the name that was chosen on this phone
  const silence = 40000; // milliseconds without a word after which the connection is taken to be lost
  const parts = ["top", "mine", "hall"];

  const storage = {
    get: function () { try { return localStorage.getItem(kept); } catch (e) { return null; } },
    set: function (key) { try { localStorage.setItem(kept, key); } catch (e) { /* a private window */ } },
    drop: function () { try { localStorage.removeItem(kept); } catch (e) { /* a private window */ } }
  };
  const at = function (id) { return document.getElementById(id); };

  const asked = new URLSearchParams(location.search).get("me");
  const before = storage.get();
  if (asked === null && before) {
    location.replace("/?me=" + encodeURIComponent(before));
    return;
  }
  if (asked === "") { storage.drop(); }

  const me = document.body.dataset.me;
  let source = null;
  let timer = 0;
  let said = null; // the call that was told last; null before the first look

  // look takes in what the person's own part says: it tells a new call, and keeps the name or drops it.
  function look() {
    const gone = document.querySelector("[data-gone]");
    const mine = document.querySelector(".mine");
    if (gone) { storage.drop(); }
    if (!mine) { return; }
    if (me) { storage.set(me); }
    document.title = mine.dataset.head + " – " + document.querySelector("h1").textContent;
    const say = mine.dataset.say;
    if (said !== null && say !== said) {
      at("said").textContent = say;
      if (say) { mine.classList.add("fresh"); }
    }
    said = say;
  }

  function lost() {
    const clock = at("clock");
    at("lost").textContent = "No connection to the desk." + (clock ? " You see the hall as of " + clock.textContent + "." : "") +
      " This page goes on by itself when the connection is back.";
  }

  function alive() {
    at("lost").textContent = "";
    clearTimeout(timer);
    timer = setTimeout(function () { lost(); open(); }, silence);
  }

  // again opens the stream anew after a while, which differs from phone to phone so that they do not come all at once.
  function again() {
    clearTimeout(timer);
    timer = setTimeout(open, 4000 + 4000 * Math.random());
  }

  function open() {
    if (source) { source.close(); }
    source = new EventSource("/live?me=" + encodeURIComponent(me));
    source.onopen = alive;
    source.onerror = function () {
      lost();
      source.close();
      again();
    };
    source.addEventListener("beat", alive);
    for (const part of parts) {
      source.addEventListener(part, function (event) {
        alive();
        at(part).innerHTML = event.data;
        if (part === "mine") { look(); }
      });
    }
    source.addEventListener("over", function () {
      source.close();
      clearTimeout(timer);
      at("lost").textContent = "";
    });
  }

  look();
  open();
})();
