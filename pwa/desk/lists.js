// Fields that are lists: settings by time of day, minutes, names, contacts.
import { html, nothing } from '../vendor/lit-html.js';
import { numberBox, textBox, choiceBox } from './fields.js';
import { link } from './parts.js';
import { get, number } from './tree.js';

const rows = (view, path) => get(view.tree, path) ?? [];
const drop = (words, act, path, name) => html`<button type="button" class="again" aria-label=${words('list-remove-named', { name })} @click=${() => act.drop(path)}>${words('list-remove')}</button>`;

// The first entry begins at midnight; the format knows no other beginning.
const schedule = (view, words, act, field) => html`<ol class="list">${rows(view, field.path).map((_, at) => {
  const path = `${field.path}/${at}`;
  const name = words('place-nth', { name: words(field.label), nth: String(at + 1) });
  return html`<li>${at === 0 ? html`<span class="fixed"><bdi dir="ltr">00:00</bdi></span>` : textBox(view, act, `${path}/from`, words('place-clock', { name }), { size: 'clock', mode: 'numeric' })}
    ${numberBox(view, words, act, `${path}/value`, name, { bare: true })}${at === 0 ? nothing : drop(words, act, path, name)}</li>`; })}
  <li>${link(words('list-add-time'), () => act.add(field.path, { from: '' }))}</li></ol>`;

const minutes = (view, words, act, field) => html`<ol class="list">${rows(view, field.path).map((_, at) => {
  const name = words('place-nth', { name: words(field.label), nth: String(at + 1) });
  return html`<li>${numberBox(view, words, act, `${field.path}/${at}`, name, { bare: true })}${drop(words, act, `${field.path}/${at}`, name)}</li>`; })}
  <li>${link(words('list-add-look'), () => act.add(field.path, number('')))}</li></ol>`;

const names = (view, words, act, field) => html`<ol class="list">${rows(view, field.path).map((_, at) => {
  const name = words('place-nth', { name: words(field.label), nth: String(at + 1) });
  return html`<li>${textBox(view, act, `${field.path}/${at}`, name)}${drop(words, act, `${field.path}/${at}`, name)}</li>`; })}
  <li>${link(words('list-add-line'), () => act.add(field.path, ''))}</li></ol>`;

const contacts = (view, words, act, field) => html`<ol class="list contacts">${rows(view, field.path).map((_, at) => {
  const path = `${field.path}/${at}`;
  const nth = label => words('place-nth', { name: words(label), nth: String(at + 1) });
  const part = (label, box, help) => html`<div class="part"><span class="fname">${words(label)}</span>${box}${help ? html`<span class="help">${help}</span>` : nothing}</div>`;
  return html`<li>${part('place-contact-name', textBox(view, act, `${path}/name`, nth('place-contact-name')))}
    ${part('place-contact-relation', choiceBox(view, words, act, `${path}/relation`, nth('place-contact-relation'), [['team', words('relation-team')], ['home', words('relation-home')], ['other', words('relation-other')]]))}
    ${part('place-contact-phone', textBox(view, act, `${path}/phone`, nth('place-contact-phone'), { mode: 'tel' }))}
    ${part('place-contact-when', textBox(view, act, `${path}/when`, nth('place-contact-when')), words('contact-when-help'))}
    ${drop(words, act, path, nth('place-contact-name'))}</li>`; })}
  <li>${link(words('list-add-contact'), () => act.add(field.path, { name: '', phone: '', when: '' }))}</li></ol>`;

export const lists = { schedule, minutes, names, contacts };
