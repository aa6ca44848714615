// What the checks of axe find on a page, as sentences; contrast of 7 to 1 included. The page's clock must flow, or axe waits for ever.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const script = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
export const strict = { runOnly: { type: 'tag', values: tags }, rules: { 'color-contrast-enhanced': { enabled: true } } };
// At the bedside sizes are measured by the journey itself: axe would count what the foot covers until it is scrolled to.
export const overTheFoot = { ...strict, rules: { ...strict.rules, 'target-size': { enabled: false } } };

export const axeFaults = async (page, options) => {
  await page.evaluate(script);
  return page.evaluate(async asked => (await window.axe.run(document, asked)).violations.map(entry => `${entry.id}: ${entry.nodes.map(node => node.target.join(' ')).join(', ')}`), options);
};
