// A keyboard, where there is one, types on our own keypad: each key presses the button of its sign, so that nothing gets in by
// another way. Point and comma both mean the one decimal key, and what was typed is read back.
const named = { '.': 'mark', ',': 'mark', Backspace: 'erase', Delete: 'erase' };

export const typeOnPad = event => {
  if (event.ctrlKey || event.metaKey || event.altKey || event.repeat || event.target.closest?.('input, textarea, select')) return;
  const key = /^[0-9]$/.test(event.key) ? event.key : named[event.key];
  const button = key && document.querySelector(`.pad [data-key="${key}"]`);
  if (!button) return;
  event.preventDefault();
  button.click();
};
