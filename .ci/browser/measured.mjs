// What is measured on a page: texts over texts or lines, and what stands how far down.

/** Pairs of texts that cover each other, and texts of pictures that a line runs through. */
export function collisions() {
  const faults = [];
  const seen = (element) => {
    const asks = { contentVisibilityAuto: true, opacityProperty: true, visibilityProperty: true };
    for (let at = element; at; at = at.parentElement) {
      if (getComputedStyle(at).clipPath !== 'none') return false;
    }
    return element.checkVisibility(asks);
  };
  const shrunk = (box) => ({ left: box.left + 1, right: box.right - 1, top: box.top + 2.5, bottom: box.bottom - 2.5 });
  const cover = (a, b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode;
    if (!node.data.trim() || ['TITLE', 'DESC', 'STYLE'].includes(node.parentElement.tagName.toUpperCase())) continue;
    if (!seen(node.parentElement)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      if (box.width > 2 && box.height > 2) {
        texts.push({ node, says: node.data.trim().slice(0, 40), ...shrunk(box), svg: node.parentElement.closest('svg') });
      }
    }
  }
  texts.sort((a, b) => a.top - b.top);
  texts.forEach((a, i) => {
    for (const b of texts.slice(i + 1)) {
      if (b.top > a.bottom) break;
      if (a.node !== b.node && cover(a, b)) faults.push(`"${a.says}" over "${b.says}"`);
    }
  });
  // Letters on a badge are meant to lie on what they mark.
  const drawn = texts.filter((text) => text.svg && !text.node.parentElement.classList.contains('letter'));
  const lines = 'line, polyline, path.reading, path.line, polygon.edge, polyline.far';
  for (const text of drawn) {
    for (const shape of text.svg.querySelectorAll(lines)) {
      if (shape.matches('.grid, .axis') || !cover(text, shape.getBoundingClientRect())) continue;
      const length = shape.getTotalLength();
      const matrix = shape.getScreenCTM();
      for (let at = 0; at <= length; at += Math.max(1, length / 400)) {
        const point = shape.getPointAtLength(at).matrixTransform(matrix);
        if (point.x > text.left && point.x < text.right && point.y > text.top && point.y < text.bottom) {
          faults.push(`"${text.says}" on a ${shape.tagName} ${shape.getAttribute('class')}`);
          break;
        }
      }
    }
  }
  return [...new Set(faults)];
}

/** How far down the first element of a selector stands, px; none where there is none. */
export function top(selector) {
  const found = document.querySelector(selector);
  return found ? found.getBoundingClientRect().top + scrollY : null;
}

/** How far down the last part of an element ends in sheets of a height, where it is printed. */
export function sheetOf([selector, height]) {
  const found = document.querySelector(selector);
  return found ? Math.ceil((found.getBoundingClientRect().bottom + scrollY) / height) : null;
}
