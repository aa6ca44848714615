// The ways in: the camera, a photograph of the code, a file, a text. All lead to the same page, where nothing is in use yet.
import { html, nothing } from '../vendor/lit-html.js';
import { plain, plainSheet } from '../views/parts.js';
import { inPhoto, openCamera, watch } from './camera.js';

const largestPhoto = 40000000, longestText = 400000;

export const receive = ({ words, draw, bring, bringFile, away = () => html`<p class="note"><a href="./">${words('back')}</a></p>` }) => {
  const view = { stream: null, said: null };
  let stopLooking, asked = 0;
  const say = sentence => { view.said = sentence; draw(); };

  const leave = () => {
    asked += 1;
    stopLooking?.();
    for (const track of view.stream?.getTracks() ?? []) track.stop();
    Object.assign(view, { stream: null, said: null });
  };
  const show = video => {
    if (!video || !view.stream || video.srcObject === view.stream) return;
    video.srcObject = view.stream;
    video.play().catch(() => {});
    stopLooking = watch(video, text => { leave(); bring(text); });
  };
  const act = {
    async camera() {
      view.said = null;
      const mine = (asked += 1);
      try {
        const stream = await openCamera();
        // The page was left while the browser asked: the camera must not stay on.
        if (mine !== asked) { for (const track of stream.getTracks()) track.stop(); return; }
        view.stream = stream;
      } catch { view.said = words('bring-no-camera'); }
      draw();
      show(document.getElementById('camera'));
    },
    stopCamera() { leave(); draw(); },
    async photo(box) {
      const [file] = box.files;
      box.value = '';
      if (!file) return;
      if (file.size > largestPhoto) { say(words('bring-photo-large')); return; }
      let text = null;
      try { text = await inPhoto(file); } catch { say(words('bring-photo-unreadable')); return; }
      if (text === null) say(words('bring-photo-none'));
      else bring(text);
    },
    file(box) { const [file] = box.files; box.value = ''; if (file) bringFile(file); },
    paste() {
      const { value } = document.getElementById('pasted');
      if (value.length > longestText) say(words('refused-too-large'));
      else if (value.trim()) bring(value);
      else say(words('bring-paste-empty'));
    },
  };

  const page = () => plainSheet(html`
  <h1 class="name small" tabindex="-1">${words('bring-title')}</h1>
  <p class="lede">${words('bring-lede')}</p>
  ${view.said ? html`<p class="warnbox" role="alert">${view.said}</p>` : nothing}
  ${view.stream ? html`<video id="camera" class="camera" muted playsinline aria-label=${words('bring-camera-picture')}></video><p class="note" role="status">${words('bring-camera-how')}</p>
    <div class="cells">${plain(words('bring-camera-stop'), () => act.stopCamera())}</div>` : html`<div class="cells">
    ${plain(words('bring-camera'), () => act.camera(), words('bring-camera-sub'))}
    <label class="press wide file"><span>${words('bring-photo')}<span class="sub">${words('bring-photo-sub')}</span></span><input type="file" accept="image/*" @change=${event => act.photo(event.target)}></label>
    <label class="press wide file"><span>${words('bring-plan')}<span class="sub">${words('bring-plan-sub')}</span></span><input type="file" accept=".json,application/json" @change=${event => act.file(event.target)}></label></div>`}
  <label class="pasting"><span>${words('bring-paste')}<span class="sub">${words('bring-paste-sub')}</span></span><textarea id="pasted" rows="4" autocomplete="off" spellcheck="false"></textarea></label>
  <div class="cells">${plain(words('bring-paste-read'), () => act.paste())}</div>
  ${away()}`);

  return { page, leave, place: () => (view.stream ? 'camera' : 'ways') };
};
