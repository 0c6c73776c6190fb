(function () {
  "use strict";
  const faults = [];

  function parts(colour) {
    const m = colour.match(/rgba?\(([\d.]+), ([\d.]+), ([\d.]+)(?:, ([\d.]+))?\)/);
    return m ? [m[1], m[2], m[3], m[4] === undefined ? 1 : m[4]].map(Number) : null;
  }
  function luminance(c) {
    const f = c.slice(0, 3).map(function (v) {
      v /= 255;
      return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    });
    return 0.2126 * f[0] + 0.7152 * f[1] + 0.0722 * f[2];
  }
  function behind(e) {
    for (; e; e = e.parentElement) {
      const c = parts(getComputedStyle(e).backgroundColor);
      if (c && c[3] === 1) { return c; }
      if (c && c[3] !== 0) { faults.push("a colour that shines through: " + e.outerHTML.slice(0, 80)); }
    }
    return [255, 255, 255, 1];
  }

  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const e = texts.currentNode.parentElement;
    const text = texts.currentNode.textContent.trim();
    if (!text || !e.getClientRects().length || e.closest(".unseen, script, noscript, option")) { continue; }
    const style = getComputedStyle(e);
    const a = luminance(parts(style.color));
    const b = luminance(behind(e));
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    const size = parseFloat(style.fontSize);
    const large = size >= 24 || (size >= 18.66 && parseInt(style.fontWeight, 10) >= 700);
    if (ratio < (large ? 3 : 4.5)) { faults.push("contrast " + ratio.toFixed(2) + ": " + text); }
  }

  document.querySelectorAll("a, button, select, input, [role=button]").forEach(function (e) {
    const box = e.getBoundingClientRect();
    if (box.width === 0) { return; }
    if (box.width < 44 || box.height < 44) { faults.push("target of " + box.width.toFixed(1) + " by " + box.height.toFixed(1) + ": " + e.outerHTML.slice(0, 80)); }
  });

  document.querySelectorAll("body *").forEach(function (e) {
    const box = e.getBoundingClientRect();
    if (box.right > document.documentElement.clientWidth + 0.5) { faults.push("wider than the screen: " + e.outerHTML.slice(0, 80)); }
  });
  document.querySelectorAll("th[scope=col]").forEach(function (e) {
    const words = e.textContent.trim().split(/\s+/).length;
    const range = document.createRange();
    range.selectNodeContents(e);
    const lines = range.getBoundingClientRect().height / parseFloat(getComputedStyle(e).fontSize) / 1.6;
    if (lines > words) { faults.push("a word in pieces: " + e.textContent); }
  });
  return faults;
})()
