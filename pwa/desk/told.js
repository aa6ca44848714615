// The last incident of the person chosen, told at the desk as it is told at the bedside.
import { html } from '../vendor/lit-html.js';
import { desk, press } from './parts.js';

export const told = (view, words, act) => desk(view, words, html`
  ${view.told ? view.telling.account({ told: view.told, name: view.person.name || words('desk-no-name'), line: view.person.line, dayWords: view.dayWords, said: view.said }, words, view.telling.out)
    : html`<h1 tabindex="-1">${words('story-title')}</h1><p class="lede">${words('story-plan-unfinished')}</p>`}
  <div class="cells end no-print">${press(words('story-back'), () => act.page('shelf'))}</div>`);
