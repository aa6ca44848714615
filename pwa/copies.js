// The copies that last longer than this phone: a printed card, and a file somewhere else. Another plan, or another revision, needs
// new ones: what was made is kept under the fingerprint.
import { object } from './text.js';

export const fingerprintOf = (ask, plan) => ask('comparePlans', object({ before: plan, after: plan })).fingerprints.after;

export const missingCopies = (copies, fingerprint) => ['card', 'file'].filter(what => !copies?.[fingerprint]?.[what]);
