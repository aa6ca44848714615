// Killed right before each write of an incident is kept, with its first entry in it.
import { after, test } from 'node:test';
import { killedAtEach } from './killing.mjs';
import { close } from './phone.mjs';

after(close);

test('killed right before each of them: the screen that fits, nothing lost, nothing doubled, one injection', () => killedAtEach(true));
