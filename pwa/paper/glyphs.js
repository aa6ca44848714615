// Whether this device has the letters of a text. A letter it lacks is drawn as the box that also stands for a sign nobody has,
// so each letter is drawn and compared with that box.

const size = 48;
const nobodys = '\u{10FFFD}';

const drawnAs = (context, sign) => {
  context.clearRect(0, 0, size * 2, size * 2);
  context.fillText(sign, size / 2, size * 1.4);
  return `${context.measureText(sign).width} ${context.getImageData(0, 0, size * 2, size * 2).data.join('')}`;
};

export const missing = (text, language) => {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width: size * 2, height: size * 2, lang: language });
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context.font = `${size}px "Hyperlegible Next", system-ui, "Noto Sans", sans-serif`;
  const box = drawnAs(context, nobodys);
  return [...new Set(text)].some(sign => /\p{L}|\p{N}/u.test(sign) && drawnAs(context, sign) === box);
};
