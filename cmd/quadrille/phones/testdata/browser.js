// A browser as small as the script of the page needs it. It runs the script (argument 2) and prints what became of the page.
"use strict";
const fs = require("fs");
const vm = require("vm");
const script = fs.readFileSync(process.argv[2], "utf8");

function browser(search, stored) {
  const b = { went: null, stored: stored, sources: [], timers: [], ids: {}, mine: null, gone: null, classes: [] };
  for (const id of ["lost", "said", "top", "mine", "hall", "clock"]) { b.ids[id] = { textContent: "", innerHTML: "" }; }
  b.ids.clock.textContent = "19:42";
  const context = {
    URLSearchParams: URLSearchParams, encodeURIComponent: encodeURIComponent, Math: Math,
    location: { search: search, replace: function (to) { b.went = to; } },
    localStorage: {
      getItem: function () { return b.stored; }, setItem: function (k, v) { b.stored = v; }, removeItem: function () { b.stored = null; }
    },
    setTimeout: function (f, ms) { b.timers.push({ f: f, ms: ms }); return b.timers.length; },
    clearTimeout: function (n) { if (n > 0) { b.timers[n - 1].f = null; } },
    document: {
      title: "", body: { dataset: { me: new URLSearchParams(search).get("me") || "" } },
      getElementById: function (id) { return b.ids[id]; },
      querySelector: function (what) { return { ".mine": b.mine, "[data-gone]": b.gone, h1: { textContent: "Autumn night" } }[what]; }
    },
    EventSource: function (url) {
      this.url = url; this.on = {}; this.closed = false;
      this.addEventListener = function (name, f) { this.on[name] = f; };
      this.close = function () { this.closed = true; };
      b.sources.push(this);
    }
  };
  b.context = context;
  b.run = function () { vm.runInNewContext(script, context); return b; };
  b.own = function (head, say) { b.mine = { dataset: { head: head, say: say }, classList: { add: function (c) { b.classes.push(c); } } }; };
  b.last = function () { return b.sources[b.sources.length - 1]; };
  b.wait = function () { for (const t of b.timers.slice()) { const f = t.f; t.f = null; if (f) { f(); } } };
  return b;
}

const out = {};

let b = browser("", "abc").run();
out.remembers = b.went;

b = browser("?me=", "abc").run();
out.forgets = [b.went, b.stored, b.last().url];

b = browser("?me=abc", null);
b.own("You wait", "");
b.run();
out.keeps = [b.stored, b.context.document.title, b.last().url];
b.last().onopen();
b.own("Go to court 2", "Go to court 2, with Ben B.");
b.last().on.mine({ data: "<p>go</p>" });
out.called = [b.ids.mine.innerHTML, b.ids.said.textContent, b.context.document.title, b.classes.join()];
b.last().on.mine({ data: "<p>go, again</p>" });
out.once = b.classes.join();
b.last().onerror();
out.lost = [b.ids.lost.textContent, b.last().closed, b.sources.length];
b.wait();
out.again = [b.sources.length, b.last().closed];
b.last().onopen();
out.found = b.ids.lost.textContent;
b.wait(); // nothing came for long
out.silent = [b.ids.lost.textContent !== "", b.sources.length];
b.last().on.beat({ data: "-" });
b.last().on.over({ data: "-" });
b.wait();
out.over = [b.last().closed, b.ids.lost.textContent, b.sources.length];

b = browser("?me=abc", "abc");
b.gone = {};
b.run();
out.gone = b.stored;

console.log(JSON.stringify(out));
