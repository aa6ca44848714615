// Key and slots in, words out. A missing message or slot is an error and never a gap on the screen: a sentence with a
// hole in it can be read as its opposite.
import { FluentBundle, FluentResource } from './vendor/fluent/index.js';

export const reader = (language, source) => {
  const bundle = new FluentBundle(language);
  const add = text => { const faults = bundle.addResource(new FluentResource(text)); if (faults.length) throw faults[0]; };
  add(source);
  const say = (id, slots = {}) => {
    const message = bundle.getMessage(id);
    if (!message?.value) throw new Error(`There is no message ${id}`);
    for (const [slot, value] of Object.entries(slots))
      if (typeof value !== 'string' || value === '') throw new Error(`${id} has nothing for ${slot}`);
    const problems = [];
    const text = bundle.formatPattern(message.value, slots, problems);
    if (problems.length) throw new Error(`${id}: ${problems[0].message}`);
    return text;
  };
  return Object.assign(say, { add });
};
