// What is wrong with the page as it is laid out now: a list of sentences, empty if nothing is.
(() => {
  const faults = [];
  const screenWidth = document.documentElement.clientWidth;
  const say = (text) => { if (faults.length < 40) { faults.push(text); } };
  const name = (element) => {
    const text = (element.textContent || '').trim().replace(/\s+/g, ' ').slice(0, 50);
    return element.tagName.toLowerCase() + (element.className.baseVal === undefined && element.className
      ? '.' + element.className : '') + ' "' + text + '"';
  };
  const shown = (element) => element.checkVisibility() && element.getClientRects().length > 0;
  const unseen = (element) => element.closest('.unseen') !== null || element.closest('title') !== null
    || (element.closest('.many thead') !== null && screenWidth <= 640);

  // Nothing wider than the screen.
  if (document.documentElement.scrollWidth > screenWidth) {
    say('the page is ' + document.documentElement.scrollWidth + ' px wide on a screen of ' + screenWidth);
  }
  const blocks = [...document.querySelectorAll('body *')].filter((e) => shown(e) && !unseen(e) && !e.closest('svg'));
  for (const element of blocks) {
    const box = element.getBoundingClientRect();
    const around = element.parentElement.getBoundingClientRect();
    if (element.tagName === 'TABLE' && box.width > around.width) {
      say('table wider by ' + (box.width - around.width).toFixed(0) + ' px than its section: ' + name(element));
    }
    if (box.right > screenWidth + 0.5 || box.left < -0.5) {
      say('beyond the screen: ' + name(element));
    }
    if (element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0
        && getComputedStyle(element).display !== 'inline') {
      say('text wider than its box: ' + name(element));
    }
  }

  // Nothing empty, nothing left of a template.
  for (const element of document.querySelectorAll('h1,h2,h3,p,li,dt,dd,th,td,caption,figcaption,.name,.amount')) {
    const text = element.textContent.trim();
    if (text === '') {
      say('empty: ' + name(element) + ' in ' + (element.closest('section') || document.body).id);
    }
    if (/\bnull\b|\bNaN\b|\bInfinity\b|\bundefined\b|\{\{|\}\}|Optional\[/.test(text)) {
      say('left over: ' + name(element));
    }
  }

  // No two texts upon each other: lines of text in the page, and within each drawing.
  const overlap = (a, b, slack) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > slack
    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > slack;
  const inner = (box, share) => ({ left: box.left, right: box.right,
    top: box.top + share * (box.bottom - box.top), bottom: box.bottom - share * (box.bottom - box.top) });
  for (const drawing of document.querySelectorAll('svg')) {
    if (!shown(drawing)) { continue; }
    const frame = drawing.getBoundingClientRect();
    const texts = [...drawing.querySelectorAll('text')].filter((t) => t.textContent.trim() !== '');
    const boxes = texts.map((t) => inner(t.getBoundingClientRect(), 0.2));
    texts.forEach((text, i) => {
      if (boxes[i].left < frame.left - 1 || boxes[i].right > frame.right + 1
          || boxes[i].top < frame.top - 1 || boxes[i].bottom > frame.bottom + 1) {
        say('outside its drawing: "' + text.textContent + '" in ' + drawing.querySelector('title').textContent);
      }
      for (let j = 0; j < i; j++) {
        if (overlap(boxes[i], boxes[j], 0.6)) {
          say('"' + text.textContent + '" lies upon "' + texts[j].textContent + '" in '
            + drawing.querySelector('title').textContent);
        }
      }
    });
  }
  const leaves = blocks.filter((e) => [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== ''));
  const lines = [];
  for (const element of leaves) {
    const range = document.createRange();
    for (const node of element.childNodes) {
      if (node.nodeType === 3 && node.textContent.trim() !== '') {
        range.selectNodeContents(node);
        for (const box of range.getClientRects()) { lines.push([element, inner(box, 0.25)]); }
      }
    }
  }
  lines.sort((a, b) => a[1].top - b[1].top);
  for (let i = 0; i < lines.length; i++) {
    for (let j = i + 1; j < lines.length && lines[j][1].top < lines[i][1].bottom; j++) {
      if (overlap(lines[i][1], lines[j][1], 0.6)) {
        say(name(lines[i][0]) + ' lies upon ' + name(lines[j][0]));
      }
    }
  }

  // Contrast of text against what is behind it: WCAG 2.1, 1.4.3, with the relative luminance defined there.
  const rgb = (colour) => (colour.match(/[\d.]+/g) || []).map(Number);
  const luminance = (colour) => {
    const [r, g, b] = rgb(colour).map((c) => c / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (a, b) => {
    const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
    return (light + 0.05) / (dark + 0.05);
  };
  const ground = (element) => {
    for (let e = element; e; e = e.parentElement) {
      const colour = getComputedStyle(e).backgroundColor;
      if (rgb(colour).length === 3) { return colour; }
    }
    return 'rgb(255, 255, 255)';
  };
  for (const element of leaves) {
    const ratio = contrast(getComputedStyle(element).color, ground(element));
    if (ratio < 4.5) { say('contrast ' + ratio.toFixed(2) + ': ' + name(element)); }
    const label = getComputedStyle(element, '::before');
    if (label.content !== 'none' && contrast(label.color, ground(element)) < 4.5) {
      say('contrast of the label of ' + name(element));
    }
  }
  for (const text of document.querySelectorAll('svg text')) {
    if (!shown(text.ownerSVGElement)) { continue; }
    for (const behind of ['--chart-paper', '--chart-band']) {
      const probe = document.createElement('span');
      probe.style.color = 'var(' + behind + ')';
      document.body.append(probe);
      const ratio = contrast(getComputedStyle(text).fill, getComputedStyle(probe).color);
      probe.remove();
      if (ratio < 4.5) { say('contrast ' + ratio.toFixed(2) + ' on ' + behind + ': "' + text.textContent + '"'); }
    }
  }
  return faults;
})()
