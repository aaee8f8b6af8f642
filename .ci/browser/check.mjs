// Opens pages in Chromium and fails where one asks for anything beyond itself, complains,
// scrolls sideways, prints on too many sheets, or breaks a rule of accessibility.
// Usage: node check.mjs CHROMIUM PAGE... ; CHROMIUM is the browser's path.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const WIDTHS = [360, 768, 1280];
const SCHEMES = ['light', 'dark'];
const SHEETS = ['A4', 'Letter'];
const MOST_SHEETS = 2;

const [browserPath, ...pages] = process.argv.slice(2);
const require = createRequire(import.meta.url);
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

/** Sheets of a PDF as Chromium writes it. */
function sheets(pdf) {
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;
}

/** What is wrong with one page. */
async function faults(browser, file) {
  const found = [];
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
    }
    await page.evaluate(axe);
    const { violations } = await page.evaluate(() => globalThis.axe.run(document));
    for (const { id, nodes } of violations) {
      found.push(`${colorScheme}: ${id}: ${nodes[0].html.slice(0, 160)}`);
    }
  }
  await page.emulateMedia({ media: 'print', colorScheme: 'light' });
  if (basename(file).startsWith('plan-')) {
    for (const format of SHEETS) {
      const count = sheets(await page.pdf({ format }));
      if (count < 1 || count > MOST_SHEETS) found.push(`prints on ${count} sheets of ${format}`);
    }
  }
  await context.close();
  return found;
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
