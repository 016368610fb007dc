// Codes read with the phone's camera: the picture lies over the app until it is closed. The browser's own detector
// where there is one, else the reader in scan_picture.js.

import {Event} from './bridge.js';
import {say} from './words.js';

const kPauseMs = 60;
const kLongestSide = 720;  // what a code on a phone's screen needs, and no more

async function detector(script) {
  const formats = await globalThis.BarcodeDetector?.getSupportedFormats?.().catch(() => []);
  if (formats?.includes('qr_code')) {
    const native = new BarcodeDetector({formats: ['qr_code']});
    return async (video) => (await native.detect(video)).map((code) => code.rawValue);
  }
  const {read} = await import(script);
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d', {willReadFrequently: true});
  return async (video) => {
    const scale = Math.min(1, kLongestSide / Math.max(video.videoWidth, video.videoHeight));
    canvas.width = Math.round(video.videoWidth * scale);
    canvas.height = Math.round(video.videoHeight * scale);
    pen.drawImage(video, 0, 0, canvas.width, canvas.height);
    const text = read(pen.getImageData(0, 0, canvas.width, canvas.height));
    return text ? [text] : [];
  };
}

const why = (error) => ({NotAllowedError: 'denied', SecurityError: 'denied', NotFoundError: 'none'})[error?.name] ?? 'other';

function lay(close) {
  const box = document.createElement('section');
  box.id = 'scan';
  const video = document.createElement('video');
  video.muted = video.playsInline = true;
  const hint = document.createElement('p');
  hint.textContent = say('scan_hint');
  const button = document.createElement('button');
  button.textContent = say('scan_close');
  button.addEventListener('click', close);
  box.append(video, hint, button);
  document.body.append(box);
  return {box, video};
}

/** @returns (on) → begins or ends; codes come as events, each text once in a row. */
export function makeScan(post, script) {
  let running = null;

  function end(reason = '') {
    if (!running) return;
    for (const track of running.stream?.getTracks() ?? []) track.stop();
    running.box.remove();
    running = null;
    post(Event.scanEnded, 'scan', reason);
  }

  async function begin() {
    if (running) return;
    const own = running = lay(() => end());
    try {
      if (!navigator.mediaDevices) throw new DOMException('no camera', 'NotFoundError');
      own.stream = await navigator.mediaDevices.getUserMedia({video: {facingMode: 'environment'}});
      if (running !== own) return own.stream.getTracks().forEach((track) => track.stop());
      own.video.srcObject = own.stream;
      const [find] = await Promise.all([detector(script), own.video.play()]);
      let last = '';
      while (running === own) {
        for (const text of await find(own.video)) {
          if (text !== last && running === own) post(Event.scanned, 'scan', text);
          last = text;
        }
        await new Promise((resolve) => setTimeout(resolve, kPauseMs));
      }
    } catch (error) {
      if (running === own) end(why(error));
    }
  }

  return (on) => (on ? begin() : end());
}
