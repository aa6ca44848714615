// Looks for a code in what the camera sees, picture by picture, or in a photograph. The decoder gives itself one frame's time by
// default; a code of this size needs more.
import decodeQR from '../vendor/qr/decode.js';

const longestSide = 1920, live = 250, photo = 4000;

const found = (image, time) => {
  try { return decodeQR(image, { timeLimit: time, effort: time === photo ? 16 : 4 }); } catch { return null; }   // no code in this picture
};
const surface = () => {
  const canvas = document.createElement('canvas');
  return { canvas, pen: canvas.getContext('2d', { willReadFrequently: true }) };
};
const read = ({ canvas, pen }, source, width, height, time) => {
  const smaller = Math.min(1, longestSide / Math.max(width, height));
  Object.assign(canvas, { width: Math.round(width * smaller), height: Math.round(height * smaller) });
  pen.drawImage(source, 0, 0, canvas.width, canvas.height);
  return found(pen.getImageData(0, 0, canvas.width, canvas.height), time);
};

// The text of the code, or null; the picture goes no further than this page.
export const inPhoto = async file => {
  const picture = await createImageBitmap(file);
  try { return read(surface(), picture, picture.width, picture.height, photo); } finally { picture.close(); }
};

export const openCamera = () => navigator.mediaDevices.getUserMedia({ audio: false, video: { facingMode: 'environment', width: { ideal: longestSide }, height: { ideal: 1080 } } });

// Goes on until a code is there or `stop` is called; the picture on the screen stays quick because each look waits its turn.
export const watch = (video, tell) => {
  const own = surface();
  let over = false;
  const look = () => {
    if (over) return;
    const text = video.readyState >= 2 && video.videoWidth ? read(own, video, video.videoWidth, video.videoHeight, live) : null;
    if (text) { over = true; tell(text); return; }
    waiting = setTimeout(look, 60);
  };
  let waiting = setTimeout(look, 60);
  return () => { over = true; clearTimeout(waiting); };
};
