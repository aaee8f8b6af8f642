// Opens pages in Chromium and fails where one asks for anything beyond itself, complains,
// scrolls sideways, has a text over another or over a line, prints on too many sheets, breaks
// a rule of accessibility, keeps its values from the keyboard, or hides what is to be done.
// Usage: node check.mjs CHROMIUM PAGE... ; CHROMIUM is the browser's path.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { collisions, sheetOf, top } from './measured.mjs';

const WIDTHS = [360, 390, 768, 1280];
const LOOKED_AT = [390, 1280];
const SCHEMES = ['light', 'dark'];
const SHEETS = ['A4', 'Letter'];
const MOST_SHEETS = 3;
/** Findings of a plan begin above this on a desk, px. */
const FINDINGS_ABOVE = 700;
/** What is seen of A4 at 96 px to the inch between its margins, px. */
const A4 = { width: 718, height: 1054 };

const [browserPath, ...pages] = process.argv.slice(2);
const require = createRequire(import.meta.url);
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

/** Sheets of a PDF as Chromium writes it. */
function sheets(pdf) {
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;
}

/** The first values that the keyboard finds: Tab leads into a chart, arrows along it. */
async function toldByKeys(page) {
  const charts = await page.locator('fieldset.values').count();
  if (charts === 0) return null;
  await page.locator('fieldset.values input').first().focus();
  const shown = () => page.evaluate(() => {
    const says = document.activeElement.closest('label')?.querySelector('span');
    return says && getComputedStyle(says).opacity === '1' ? says.textContent : '';
  });
  await page.keyboard.press('ArrowRight');
  const first = await shown();
  await page.keyboard.press('ArrowRight');
  const second = await shown();
  return first && second && first !== second;
}

/** What is wrong with one page. */
async function faults(browser, file) {
  const found = [];
  const isPlan = basename(file).startsWith('plan-');
  const url = pathToFileURL(file).href;
  const context = await browser.newContext({ offline: true });
  const page = await context.newPage();
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) found.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => found.push(`script: ${error.message}`));
  page.on('request', (request) => {
    if (request.url() !== url && !request.url().startsWith('data:')) found.push(`asks for ${request.url()}`);
  });
  for (const colorScheme of SCHEMES) {
    await page.emulateMedia({ colorScheme });
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 800 });
      await page.goto(url);
      const widest = await page.evaluate(() => document.documentElement.scrollWidth);
      if (widest > width) found.push(`${widest} px wide at ${width} px, ${colorScheme}`);
      if (!LOOKED_AT.includes(width)) continue;
      for (const fault of await page.evaluate(collisions)) found.push(`${width} px: ${fault}`);
      await page.evaluate(axe);
      const { violations } = await page.evaluate(() => globalThis.axe.run(document));
      for (const { id, nodes } of violations) {
        found.push(`${colorScheme}, ${width} px: ${id}: ${nodes[0].html.slice(0, 160)}`);
      }
    }
  }
  if ((await toldByKeys(page)) === false) found.push('values are not told by keys');
  const down = await page.evaluate(top, '.findings');
  if (isPlan && !(down < FINDINGS_ABOVE)) found.push(`findings begin at ${down} px`);
  await page.emulateMedia({ media: 'print', colorScheme: 'light' });
  if (isPlan) {
    await page.setViewportSize(A4);
    const sheet = await page.evaluate(sheetOf, ['.list', A4.height]);
    if (sheet !== 1) found.push(`the shopping list stands on sheet ${sheet}`);
    for (const format of SHEETS) {
      const count = sheets(await page.pdf({ format }));
      if (count < 1 || count > MOST_SHEETS) found.push(`prints on ${count} sheets of ${format}`);
    }
  }
  await context.close();
  return [...new Set(found)];
}

// The sandbox of the browser needs rights that a container does not give.
const browser = await chromium.launch({ executablePath: browserPath, args: ['--no-sandbox'] });
let failed = 0;
for (const file of pages) {
  const found = await faults(browser, file);
  if (found.length > 0) failed += 1;
  for (const fault of found) console.error(`${basename(file)}: ${fault}`);
}
await browser.close();
console.log(`${pages.length - failed} passed, ${failed} failed`);
process.exitCode = failed > 0 || pages.length === 0 ? 1 : 0;
