// Names that seem to be what they are not: characters that nobody sees are shown, letters of two alphabets are told, and the plan goes on
// giving its dose. What the system shows of a page, its title, holds neither name nor dose.
import assert from 'node:assert/strict';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { answer, close, site, withDemo } from './phone.mjs';

const folder = mkdtempSync(join(tmpdir(), 'stopgap-'));
after(async () => { await close(); rmSync(folder, { recursive: true }); });

// The second letter of the given name has no width beside it; the last letter of the family name is Cyrillic.
const name = 'Ma\u200bren Oduy\u0430';

test('a plan with such a name: told when it comes in, shown as it is, and its dose stands', async () => {
  const hand = await withDemo();
  const titles = new Set();
  const title = async () => titles.add(await hand.page.title());
  await title();
  const plan = JSON.parse(readFileSync(join(site, 'demo/adult.json'), 'utf8'));
  const path = join(folder, 'plan.json');
  writeFileSync(path, JSON.stringify({ ...plan, id: 'p-names', revision: 1, person: { ...plan.person, name } }));
  await hand.tap('More');
  await hand.tap('Another plan');
  await hand.page.locator('input[type=file]').first().setInputFiles(path);
  await hand.heading('Ma[U+200B]ren');
  await title();
  await hand.sees('Characters that nobody sees stand in “Ma[U+200B]ren Oduy\u0430”. Compare it with the paper.');
  await hand.sees('“Oduy\u0430” mixes alphabets: \u0430 U+0430. Compare it with the paper.');
  await hand.page.locator('#agreed-day').fill(plan.agreement.on);
  await hand.tap('Yes, this is my plan');
  await hand.heading('Ma[U+200B]ren');
  await title();
  await answer(hand);
  await hand.heading('Inject now');
  await hand.sees('4 units lispro');
  await title();
  assert.deepEqual([...titles], ['Stopgap']);
  await hand.device.end();
});
