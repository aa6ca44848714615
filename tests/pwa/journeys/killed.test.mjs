// Killed right after each write of an incident.
import { after, test } from 'node:test';
import { killedAtEach, unharmed } from './killing.mjs';
import { close } from './phone.mjs';

after(close);

test('the writes of the incident are the ones listed in killing.mjs, each the whole of one tap', unharmed);
test('killed right after each of them: the screen that fits, nothing lost, nothing doubled, one injection', () => killedAtEach(false));
